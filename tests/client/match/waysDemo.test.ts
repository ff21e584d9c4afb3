import { describe, expect, it } from "vitest";
import { withChanges } from "#client/state/handles.ts";
import { solve } from "#client/state/outcome.ts";
import { answerTo } from "#client/views/match/ways/answer.ts";
import { WAY_NAMES } from "#client/views/match/ways/names.ts";
import { questionOf } from "#client/views/match/ways/question.ts";
import { valueToTry } from "#client/views/match/ways/wayWords.ts";
import type { Wanted } from "#shared/decide/wanted.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();

/** Margin of a build of the demo with one handle set, the whole way from the book. */
function triedMargin(id: string, handle: string, value: number, wanted: Wanted): number {
  const stored = book.builds.find((build) => build.id === id);
  if (!stored) throw new Error(`The demo has no ${id}.`);
  const { prediction } = solve(book, withChanges(stored.data, { [handle]: value }));
  const at =
    wanted.attitude === "worst"
      ? prediction?.worst
      : prediction?.attitudes.find(({ angle }) => angle === wanted.attitude);
  return at?.[wanted.mode].margin ?? Number.POSITIVE_INFINITY;
}

const ASKED: readonly Wanted[] = [
  { attitude: "worst", mode: "parked" },
  { attitude: 180, mode: "driving" },
];
const cases = book.builds.flatMap(({ id }) => ASKED.map((wanted) => ({ id, ...wanted })));

describe("ways tried on the demo, the whole way from the book", () => {
  it.each(cases)("$id on $attitude $mode: each shown value has the margin wanted", ({ id, ...wanted }) => {
    const stored = book.builds.find((build) => build.id === id);
    const outcome = stored && solve(book, stored.data);
    const question = outcome && questionOf(book, outcome, wanted);
    if (!question) throw new Error(`${id} has no numbers.`);
    for (const target of [0.8, 2.2]) {
      const { ways } = answerTo({
        ...question,
        cell: question.cell,
        asked: { ...wanted, targetMargin: target },
      });
      for (const way of ways) {
        const { handle } = WAY_NAMES[way.handle];
        const value = valueToTry(way);
        if (way.state !== "does" || handle === null || value === null) continue;
        const margin = triedMargin(id, handle, value, wanted);
        expect(margin, `${way.handle} at ${value}`).toBeGreaterThanOrEqual(target * (1 - 1e-9));
      }
    }
  });
});
