import { describe, expect, it } from "vitest";
import { solve } from "#client/state/outcome.ts";
import { replyTo } from "#client/state/uncertainty/answer.ts";
import { buildFor } from "#client/views/choose/openCombination.ts";
import { factBoard } from "#client/views/choose/parts/factWorkings.ts";
import {
  CHANCE_TITLE,
  LEAST_TITLE,
  REACHED_TITLE,
  sampledCombinationBoard,
} from "#client/views/choose/parts/marginWorkings.ts";
import { buildUncertainty } from "#shared/book/buildUncertainty.ts";
import { chooseProblem } from "#shared/book/choose/problem.ts";
import { detailOf } from "#shared/decide/choose/detail.ts";
import { prepare } from "#shared/decide/choose/prepare.ts";
import { combinationUncertainty } from "#shared/decide/choose/shortlist.ts";
import { solveChunk } from "#shared/decide/choose/solveChunk.ts";
import { type Board, type Working, workingBehind } from "#shared/physics/working.ts";
import { chooseBody } from "#tests/support/chooseQuestion.ts";
import { demoBook } from "#tests/support/demoBook.ts";
import { expectWhole } from "./expectWhole.ts";

const book = demoBook();
const attitudes = [
  { angle: 90, mode: "parked" },
  { angle: 153, mode: "driving" },
  { angle: "worst", mode: "driving" },
] as const;
const { build, wants, ...request } = chooseBody({
  motors: ["bell-18"],
  rotors: [{ rotor: "swept-nine" }, { rotor: "pusher-three" }],
  wants: { attitudes },
});
const { problem, base } = chooseProblem(book, { build, wants, ...request });
const prepared = prepare(problem);
const results = [solveChunk(prepared, 0, prepared.count)];
const combinationAt = (index: number) => {
  const { broken, ...combination } = detailOf(prepared, results, index);
  return { ...combination, broken: [...broken], onFront: false };
};
const turning = Array.from({ length: prepared.count }, (_, index) => combinationAt(index)).filter(
  ({ values }) => (values.speed ?? 0) > 0 && (values.margin ?? 0) > 0,
);
const ofEachKind = [turning.find(({ gap }) => gap !== null), turning.find(({ gap }) => gap === null)];

const titled = ({ workings }: Pick<Board, "workings">, title: string) =>
  workings.find((each) => each.title === title);
const values = (working: Working | undefined) => working?.values.map(({ value }) => value) ?? [];
const behind = (working: Working | undefined, board: Board) =>
  working?.values.map((value) => workingBehind(value, board.workings)?.title) ?? [];

describe("workings of a combination's margins", () => {
  it("of the margin that the search ranks by: the least of the wanted attitudes, each down to its own working", () => {
    for (const combination of ofEachKind) {
      if (!combination) return expect.fail("one kind doesn't turn");
      const board = factBoard(book, base, combination, wants);
      const least = titled(board, LEAST_TITLE);
      expect(least?.result.value).toBe(combination.values.margin);
      expect(values(least)).toHaveLength(attitudes.length);
      expect(Math.min(...values(least))).toBeCloseToRelative(combination.values.margin ?? Number.NaN, 1e-9);
      expect(behind(least, board)).toEqual(least?.values.map(({ meaning }) => meaning));
    }
  });

  it("of a shortlist: what the search samples of it, the least of the wanted attitudes, each down to its samples", async () => {
    for (const combination of ofEachKind) {
      if (!combination) return expect.fail("one kind doesn't turn");
      const board = await sampledCombinationBoard({ book, base, combination, wants }, (asked) =>
        Promise.resolve(replyTo(asked)),
      );
      expectWhole(board);
      const stored = buildFor(book, base, combination);
      const { resolved } = solve(book, stored);
      if (!resolved) return expect.fail("a combination without numbers");
      const { sources: _said, ...asked } = buildUncertainty(book, stored, resolved);
      const told = combinationUncertainty(prepared, combination.index, asked);
      const [reached, chance] = [titled(board, REACHED_TITLE), titled(board, CHANCE_TITLE)];
      expect(reached?.result.value).toBeCloseToRelative(told.margin5 ?? Number.NaN, 1e-9);
      expect(chance?.result.value).toBe(told.chance);
      expect(Math.min(...values(reached))).toBe(reached?.result.value);
      expect(Math.min(...values(chance))).toBe(chance?.result.value);
      for (const title of behind(reached, board)) expect(title).toMatch(/^5 to 95 % of the margin at/);
      for (const title of behind(chance, board)) expect(title).toMatch(/^chance of holding: the margin at/);
    }
  });
});
