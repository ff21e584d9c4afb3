import { describe, expect, it } from "vitest";
import { calibrationOf } from "#shared/book/calibration.ts";
import { remembered } from "#shared/book/remembered.ts";
import { demoBook } from "#tests/support/demoBook.ts";

function counting(most: number) {
  let made = 0;
  const ask = remembered((question: { readonly x: number; readonly y?: number }) => {
    made += 1;
    if (question.x < 0) throw new Error("below 0");
    return { square: question.x ** 2 };
  }, most);
  return { ask, made: () => made };
}

describe("remembered answers", () => {
  it("asked the same twice, in words alike: the very answer, worked out once", () => {
    const { ask, made } = counting(2);
    expect(ask({ x: 3 })).toEqual({ square: 9 });
    expect(ask({ x: 3 })).toBe(ask({ x: 3 }));
    expect(made()).toBe(1);
  });

  it("asked something else in the least: worked out", () => {
    const { ask, made } = counting(3);
    ask({ x: 3 });
    ask({ x: 3 + 1e-15 });
    ask({ x: 3, y: 0 });
    expect(made()).toBe(3);
  });

  it("with more questions than are kept: the longest unasked is worked out anew", () => {
    const { ask, made } = counting(2);
    for (const x of [1, 2, 1, 3, 1]) ask({ x });
    expect(made()).toBe(3);
    ask({ x: 2 });
    expect(made()).toBe(4);
  });

  it("with a refusal: refused each time", () => {
    const { ask, made } = counting(2);
    for (let i = 0; i < 2; i += 1) expect(() => ask({ x: -1 })).toThrow("below 0");
    expect(made()).toBe(2);
  });
});

describe("a calibration, with the book changed elsewhere", () => {
  const book = demoBook();
  const build = book.builds.find(({ id }) => id === "pane-crawler")?.data;
  if (!build) throw new Error("no such build");

  it("by a note: the very answer that was given before", () => {
    const noted = {
      ...book,
      packs: book.packs.map((pack) => ({ ...pack, data: { ...pack.data, note: "new" } })),
    };
    const [before, after] = [calibrationOf(book, build), calibrationOf(noted, build)];
    expect(after).not.toBe(before);
    expect(after?.answer).toBe(before?.answer);
  });

  it("by a pull set aside: another answer", () => {
    const tests = book.tests.map((test) =>
      test.id === "demo-12-pull" && test.data.kind === "pull"
        ? {
            ...test,
            data: {
              ...test.data,
              rows: test.data.rows.map((row, i) => (i === 0 ? { ...row, setAside: "slipped" } : row)),
            },
          }
        : test,
    );
    const [before, after] = [calibrationOf(book, build), calibrationOf({ ...book, tests }, build)];
    expect(after?.answer?.gap.mean).not.toBe(before?.answer?.gap.mean);
  });
});
