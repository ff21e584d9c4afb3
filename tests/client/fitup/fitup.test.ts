import { describe, expect, it } from "vitest";
import { chanceText, fitFigures, fitSentence } from "#client/views/fitup/fitWords.ts";
import { extentOf, panelsOf } from "#client/views/fitup/section.ts";
import { draftOfStack, readStack, usualStack } from "#client/views/fitup/stackDraft.ts";
import { choicesFor } from "#client/views/fitup/tryParts.ts";
import { fitStacks, stackedParts } from "#shared/book/fitUp/fitStack.ts";
import { STACK_KINDS } from "#shared/model/stacks.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();
const crawler = book.builds[0].data;
const plain = (text: string) => text.replaceAll(/[\u202f\u00a0]/g, " ");
const answer = (change: object) => plain(fitSentence(fitStacks(book, { ...crawler, ...change })));

describe("the answer of Fit-up", () => {
  it("names what may not close and by how much, else what is tightest; and what will not, with another motor", () => {
    expect(answer({})).toBe("May not close: motor in its pocket is 0.05 mm short at worst.");
    expect(answer({ stacks: crawler.stacks.slice(0, 1) })).toBe(
      "Everything closes; tightest is height under the cover, 0.40 mm left at worst.",
    );
    expect(answer({ motor: "bell-22" })).toBe("Will not close: motor in its pocket is 5.80 mm short.");
    expect(answer({ stacks: [] })).toBe("No stack is entered yet.");
  });

  it("counts how the stacks stand, those that lack a size too", () => {
    const noPack = {
      ...crawler.stacks[0],
      parts: [{ ...crawler.stacks[0].parts[0], of: "pack.height" as const }],
    };
    const fits = fitStacks(book, { ...crawler, stacks: [...crawler.stacks.slice(1), noPack] });
    expect(fitFigures(fits)).toBe("3 close, 1 may not close, 1 lacks a size");
  });

  it("never calls a chance sure that isn't", () => {
    expect(plain(chanceText(0.99999, 1))).toBe("over 99.9 %; 100 % were the errors spread evenly");
    expect(plain(chanceText(1, 1))).toBe("100 %");
  });
});

describe("the picture of Fit-up", () => {
  const panels = panelsOf(fitStacks(book, crawler), stackedParts(book, crawler));
  const [height, pocket, , , standing] = panels;

  it("draws the parts one upon the other at their true sizes, as wide as their records say", () => {
    const boxes = height.shapes.filter((shape) => "width" in shape && shape.look === "part");
    expect(boxes).toMatchObject([
      { y: 0, height: 0.018, width: 0.022, label: "Motor" },
      { y: 0.018, height: 0.012, width: 0.044, label: "Rotor" },
    ]);
    expect(height.tight.to[1] - height.tight.from[1]).toBeCloseTo(height.tight.room, 12);
  });

  it("draws a round part in its bore, and the skirt as high over the surface as the gap is", () => {
    expect(pocket.shapes[2]).toMatchObject({ width: 0.022, height: 0.018 });
    expect(pocket.tight.room).toBeCloseTo(0.1e-3, 12);
    expect(standing.shapes[1]).toMatchObject({ look: "wall" });
    expect("y" in standing.shapes[1] && standing.shapes[1].y).toBeCloseTo(0.6e-3, 12);
    expect(extentOf(standing).y1).toBeCloseTo(0.034 - 0.0004, 12);
  });

  it("marks what stands out of the space", () => {
    const taller = { ...crawler, motor: "bell-22", stacks: crawler.stacks.slice(0, 1) };
    const [panel] = panelsOf(fitStacks(book, taller), stackedParts(book, taller));
    expect(panel.shapes.find((shape) => shape.look === "over")).toMatchObject({ y: 0.032 });
    expect(panel.tight.room).toBeCloseTo(-0.002, 12);
  });
});

describe("the form of a stack", () => {
  it("reads what it shows of a stored one", () => {
    for (const stack of crawler.stacks) expect(readStack(draftOfStack(stack), [])).toEqual({ stack });
  });

  it.each(STACK_KINDS)("begun as %s lacks only what the maker has to type", (kind) => {
    const read = readStack(usualStack(kind, "New"), []);
    const problems = "problems" in read ? Object.keys(read.problems) : [];
    expect(problems.length).toBeGreaterThan(0);
    expect(problems.every((path) => /^lines\.\d+\.(nominal|name)$/.test(path))).toBe(true);
  });

  it("names a tolerance larger than the size, a part twice, a name that is taken, and an empty stack", () => {
    const [stack] = crawler.stacks;
    const draft = draftOfStack(stack);
    const [space, motor] = draft.lines;
    const wrong = { ...draft, lines: [{ ...space, tolerance: "40 mm" }, motor, { ...motor, name: "Again" }] };
    const read = readStack(wrong, [stack]);
    expect("problems" in read && Object.keys(read.problems).sort()).toEqual([
      "lines.0.tolerance",
      "lines.2.of",
      "name",
    ]);
    expect(readStack({ ...draft, lines: [space] }, [])).toHaveProperty("problems.lines");
  });
});

describe("other parts in the same housing", () => {
  it("are listed with how they would close, parts that no stack names left out", () => {
    const lists = choicesFor(book, crawler);
    expect(lists.map(({ label }) => label)).toEqual(["Motor", "Rotor"]);
    expect(lists[0].choices.map(({ label }) => plain(label))).toContain(
      "Bell motor, 22 mm: will not close, 5.80 mm short",
    );
  });
});
