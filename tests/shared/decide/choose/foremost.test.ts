import { describe, expect, it } from "vitest";
import { foremostCombinations, frontOf, markForemost } from "#shared/decide/choose/front.ts";
import { prepare } from "#shared/decide/choose/prepare.ts";
import { solveChunk } from "#shared/decide/choose/solveChunk.ts";
import { gathered } from "#shared/decide/choose/values.ts";
import { chooseQuestion } from "#tests/support/chooseQuestion.ts";

describe("markForemost, chunk by chunk", () => {
  const prepared = prepare(
    chooseQuestion({
      wants: { attitudes: [{ angle: 90, mode: "driving" }], targetMargin: 1, ratings: false },
    }).question.problem,
  );
  const whole = solveChunk(prepared, 0, prepared.count);

  it.each([1, 7, 100, 100_000])("of %i sets: the front among the marked is the front of all", (size) => {
    const chunks = [];
    for (let from = 0; from < prepared.count; from += size) {
      const chunk = solveChunk(prepared, from, Math.min(prepared.count, from + size));
      markForemost(prepared, chunk);
      chunks.push(chunk);
    }
    const results = gathered(chunks.reverse());
    const marked = foremostCombinations(results);
    const front = frontOf(prepared, results, undefined, marked);
    expect(front.length).toBeGreaterThan(3);
    expect(Array.from(front)).toEqual(Array.from(frontOf(prepared, [whole])));
    expect(marked.length).toBeLessThanOrEqual(prepared.count);
  });
});
