import { describe, expect, it } from "vitest";
import { solve } from "#client/state/outcome.ts";
import { boardOf } from "#client/ui/working/board.ts";
import { surfaceRoughness } from "#shared/book/roughnessBasis.ts";
import { ALLOWANCE_TITLE, FURTHER_TITLE } from "#shared/book/roughnessTitles.ts";
import { roughnessBoard } from "#shared/book/roughnessWorkings.ts";
import { type Board, originBehind, workingBehind } from "#shared/physics/working.ts";
import { demoBook } from "#tests/support/demoBook.ts";
import { expectWhole } from "./expectWhole.ts";

const demo = demoBook();
const surfaceOf = (id: string, book = demo) => {
  const surface = book.surfaces.find((each) => each.id === id);
  if (!surface) throw new Error(`The demo has no ${id}.`);
  return surfaceRoughness(book, surface);
};
const titled = ({ workings }: Pick<Board, "workings">, title: string) =>
  workings.find((each) => each.title === title);
const value = (board: Board, title: string, symbol: string) =>
  titled(board, title)?.values.find((each) => each.symbol === symbol)?.value ?? Number.NaN;
const kindsOf = (tests: readonly string[] = []) =>
  new Set(demo.tests.filter(({ id }) => tests.includes(id)).map(({ data }) => data.kind));

describe("workings of a surface's roughness allowance", () => {
  const roughness = surfaceOf("roof-pane");
  const board = roughnessBoard(roughness);

  it("measured separately: the allowance and its uncertainty that the page shows, by the numbers that stand in it", () => {
    expect(roughness.basis).toBe("measured separately");
    expectWhole(board);
    const of = (symbol: string) => value(board, ALLOWANCE_TITLE, symbol);
    expect(titled(board, ALLOWANCE_TITLE)?.result.value).toBe(roughness.value);
    expect(of("r_smooth") + of("d")).toBeCloseToRelative(roughness.value, 1e-12);
    expect(of("s_r")).toBe(roughness.sd);
    expect(Math.hypot(of("s_smooth"), of("s_d"))).toBeCloseToRelative(roughness.sd ?? Number.NaN, 1e-12);
  });

  it("leads from the difference to the heights of the lip, and to the leak tests on both surfaces", () => {
    const d = titled(board, ALLOWANCE_TITLE)?.values.find(({ symbol }) => symbol === "d");
    expect(d && workingBehind(d, board.workings)?.title).toBe(FURTHER_TITLE);
    const further = titled(board, FURTHER_TITLE);
    const [set] = roughness.told?.sets ?? [];
    expect(value(board, FURTHER_TITLE, "d₁")).toBe(set?.rough.height - set?.smooth.height);
    expect(value(board, FURTHER_TITLE, "s₁")).toBeCloseToRelative(
      Math.hypot(set?.rough.error, set?.smooth.error),
      1e-12,
    );
    const n = further?.values.find(({ symbol }) => symbol === "n");
    const origin = n && originBehind(n, board.origins);
    expect(origin?.tests).toEqual(roughness.testIds);
    expect(kindsOf(origin?.tests)).toEqual(new Set(["leak"]));
  });

  it("of a stated allowance: none, since nothing was worked out", () => {
    const stated = surfaceOf("side-pane");
    expect(stated.told).toBeNull();
    expect(roughnessBoard(stated).workings).toEqual([]);
  });

  it("of a build's clearance: gap and allowance, the one down to how it is known, the other to its own working or the surface's page", () => {
    let measured = 0;
    let stated = 0;
    for (const { data } of demo.builds) {
      const outcome = solve(demo, data);
      const found = outcome.resolved?.roughness;
      if (!found) continue;
      const built = boardOf(demo, outcome);
      const clearance = titled(built, "clearance under the lip");
      const of = (symbol: string) => clearance?.values.find((each) => each.symbol === symbol);
      expect(clearance?.result.value).toBe((of("h_gap")?.value ?? 0) + found.value);
      const lip = titled(built, "flow through the lip gap")?.values.find(({ symbol }) => symbol === "h");
      if (lip) expect(workingBehind(lip, built.workings)?.title).toBe("clearance under the lip");
      const [gap, r] = [of("h_gap"), of("r")];
      expect(gap && originBehind(gap, built.origins)).not.toBeNull();
      if (found.basis === "stated") stated += 1;
      else measured += 1;
      if (found.basis === "stated") expect(r && originBehind(r, built.origins)?.what).toMatch(/^Stated on/);
      else expect(r && workingBehind(r, built.workings)?.title).toBe(ALLOWANCE_TITLE);
    }
    expect(measured + stated).toBeGreaterThan(0);
  });
});
