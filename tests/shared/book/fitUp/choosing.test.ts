import { describe, expect, it } from "vitest";
import type { Book } from "#shared/book/book.ts";
import { chooseProblem } from "#shared/book/choose/problem.ts";
import { fitStacks } from "#shared/book/fitUp/fitStack.ts";
import { detailOf } from "#shared/decide/choose/detail.ts";
import { relaxations } from "#shared/decide/choose/nearest.ts";
import { prepare } from "#shared/decide/choose/prepare.ts";
import { solveChunk } from "#shared/decide/choose/solveChunk.ts";
import { chooseBody } from "#tests/support/chooseQuestion.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const demo = demoBook();

/** The demo with a pocket that is 0.1 mm wider for the crawler, which then closes with its own parts. */
const book: Book = {
  ...demo,
  builds: demo.builds.map((build) => ({
    ...build,
    data: {
      ...build.data,
      stacks: build.data.stacks.map((stack) =>
        stack.kind === "pocket" ? { ...stack, space: { ...stack.space, nominal: 0.0223 } } : stack,
      ),
    },
  })),
};

function solved(wants: object, of: Book = book) {
  const request = chooseBody({ motors: ["bell-18", "bell-22", "coreless-12"], wants });
  const { problem, base } = chooseProblem(of, request);
  const prepared = prepare(problem);
  const results = [solveChunk(prepared, 0, prepared.count)];
  const combinations = Array.from({ length: prepared.count }, (_, i) => detailOf(prepared, results, i));
  return { base, prepared, results, combinations };
}

describe("a search whose combinations must close in the housing", () => {
  const { base, combinations } = solved({ closes: true });

  it("leaves out just the combinations whose own build does not close at its worst case, by as much", () => {
    let [closing, short] = [0, 0];
    for (const { parts, diameter, broken } of combinations) {
      const fits = fitStacks(book, { ...base, ...parts, diameter });
      const least = Math.min(...fits.map(({ stack }) => stack?.worstCase[0] ?? Number.NaN));
      const found = broken.find(({ limit }) => limit === "clearance");
      // Nominal sizes of tens of millimetres, added in another order.
      if (found) expect(found.value).toBeCloseTo(least, 12);
      expect(found !== undefined || least >= -1e-12).toBe(true);
      if (found) short += 1;
      else closing += 1;
    }
    expect(closing).toBeGreaterThan(0);
    expect(short).toBeGreaterThan(0);
  });

  it("says by how much the housing is short where nothing else keeps a combination out", () => {
    const { prepared, results } = solved({ closes: true }, demo);
    const relief = relaxations(prepared, results).find(({ limit }) => limit === "clearance");
    expect(relief?.from).toBe(0);
    // The demo's pocket: 0.2 mm left, ± 0.25 mm.
    expect(relief?.to).toBeCloseTo(-0.05e-3, 12);
  });

  it("keeps them all where it isn't asked for", () => {
    const { combinations: all } = solved({});
    expect(all.some(({ broken }) => broken.some(({ limit }) => limit === "clearance"))).toBe(false);
  });
});

describe("a part whose size a stack needs and no record has", () => {
  it("keeps every combination with it out, and says that it isn't known", () => {
    const stack = {
      name: "Pack bay",
      kind: "other" as const,
      space: { name: "Bay", nominal: 0.03, basis: "drawn" as const },
      parts: [{ name: "Pack", of: "pack.height" as const, basis: "drawn" as const, quantity: 1 }],
    };
    const builds = book.builds.map((build) => ({ ...build, data: { ...build.data, stacks: [stack] } }));
    const request = chooseBody({ wants: { closes: true } });
    const { problem } = chooseProblem({ ...book, builds }, request);
    const prepared = prepare(problem);
    const results = [solveChunk(prepared, 0, prepared.count)];
    const { broken } = detailOf(prepared, results, 0);
    expect(broken.find(({ limit }) => limit === "clearance")).toMatchObject({ value: null });
  });
});
