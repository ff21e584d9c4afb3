import { expect } from "vitest";
import { parseEquation } from "#client/ui/working/parseEquation.ts";
import type { Board } from "#shared/physics/working.ts";

/** Equations read without a sign left over, sources that name their page, numbers throughout. */
export function expectWhole({ workings }: Pick<Board, "workings">): void {
  expect(workings.length).toBeGreaterThan(0);
  for (const { title, equation, source, result, values } of workings) {
    expect(parseEquation(equation).length, title).toBeGreaterThan(0);
    if (!title.startsWith("flow through everything"))
      expect(source, title).toMatch(/docs\/method\/[\w/-]+\.md/);
    expect(result.value, title).not.toBeNaN();
    for (const { symbol, value } of values) expect(value, `${title}: ${symbol}`).not.toBeNaN();
  }
}
