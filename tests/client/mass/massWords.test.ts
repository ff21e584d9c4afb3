import { describe, expect, it } from "vitest";
import { type Headroom, headroomOf } from "#client/views/mass/headroom.ts";
import {
  draftOfLine,
  EMPTY_LINE,
  readLine,
  withBooked,
  withLine,
  withoutLine,
} from "#client/views/mass/line.ts";
import {
  forgottenSentence,
  groupSums,
  headroomSentence,
  massFigures,
  massText,
  unaccountedSentence,
} from "#client/views/mass/massWords.ts";
import { balanceOf } from "#shared/book/mass/balance.ts";
import { ledgerOf } from "#shared/book/mass/ledger.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();
const crawler = book.builds[0].data;
const plain = (text: string | null) => text?.replaceAll(/[\u202f\u00a0]/g, " ");

const of = (limits: readonly (readonly [string, number, number | null])[], mass = 0.5): Headroom => ({
  ...headroomOf(book, crawler),
  mass,
  target: 1.5,
  allowed: limits.map(([name, angle, atTarget]) => ({ name, title: name, angle, atTarget, atOne: null })),
});

describe("the answer of Mass", () => {
  it.each([
    [
      [
        ["the wall", 90, 0.633],
        ["the overhang at 128°", 128, 0.556],
      ],
      "56 g left for the overhang at 128°, the tightest; 133 g for the wall.",
    ],
    [
      [
        ["the wall", 90, 0.54],
        ["the overhang at 128°", 128, 0.488],
      ],
      "Too heavy by 12 g for 1.5 × on the overhang at 128°; left: 40 g for the wall.",
    ],
    [[["the wall", 90, 0.4]], "Too heavy by 100 g for 1.5 × on the wall."],
    [[["the wall", 90, null]], "500 g on board."],
  ] as const)("of limits %j is “%s”", (limits, sentence) => {
    expect(plain(headroomSentence(of(limits)))).toBe(sentence);
  });

  it("of the demo's crawler has every attitude and the worst, and agrees with its margins", () => {
    const headroom = headroomOf(book, crawler);
    expect(headroom.allowed.map(({ title }) => title)).toEqual([
      "Ceiling",
      "Wall",
      "Roof pane",
      expect.stringMatching(/^Worst, \d+°$/),
    ]);
    for (const { angle, atOne } of headroom.allowed.slice(0, 3)) {
      const held = headroom.outcome.prediction?.attitudes.find((each) => each.angle === angle);
      expect((atOne ?? 0) / headroom.mass).toBeCloseToRelative(held?.driving.margin ?? 0, 1e-9);
    }
    expect(plain(massFigures(headroom))).toMatch(/^560 g ± 6\.6 g \(90 %\) on board, as one number/);
  });

  it("says what is on no line, and which groups nothing is entered for", () => {
    const headroom = headroomOf(book, crawler);
    expect(plain(unaccountedSentence(headroom))).toMatch(/g of the 560 g are on no line yet\.$/);
    expect(forgottenSentence(headroom)).toBeNull();
    const bare = headroomOf(book, {
      ...crawler,
      ledger: crawler.ledger.filter(({ group }) => group === "drive"),
    });
    expect(forgottenSentence(bare)).toBe(
      "Nothing is entered for electronics, structure, cover, paint and filler or wiring. Screws and glue count too.",
    );
    const over = headroomOf(book, { ...crawler, vehicle: { ...crawler.vehicle, mass: 0.4 } });
    expect(plain(unaccountedSentence(over))).toMatch(/more than the 400 g typed for the whole/);
  });

  it("sums its groups to what is on board", () => {
    const sums = groupSums(headroomOf(book, crawler));
    expect(sums.at(-1)?.group).toBe("on no line");
    expect(sums.reduce((total, { value }) => total + value, 0)).toBeCloseTo(0.56, 12);
  });

  it("shows tenths of a gram of what is small", () => {
    expect([0.133, 0.0045, 0.012, -0.003].map((mass) => plain(massText(mass)))).toEqual([
      "133 g",
      "4.5 g",
      "12 g",
      "−3 g",
    ]);
  });
});

const uncertaintyOf = (value: number | undefined) =>
  value === undefined ? {} : { uncertainty: expect.closeTo(value, 12) };

describe("a line of the ledger, as typed", () => {
  const typed = { ...EMPTY_LINE, name: " Screws ", mass: "0.4", quantity: "24" };

  it("is read in grams, a piece, with 1 piece where none is said", () => {
    expect(readLine(typed, [])).toEqual({
      line: {
        name: "Screws",
        group: "structure",
        quantity: 24,
        mass: 0.0004,
        basis: "estimated",
        alternatives: [],
      },
    });
    expect(readLine({ ...typed, quantity: "" }, [])).toMatchObject({ line: { quantity: 1 } });
  });

  it("books what is on no line as a line of its own, once; lines that come to more than the whole leave nothing to book", () => {
    const ledger = ledgerOf(book, crawler);
    const booked = withBooked(crawler, ledger, balanceOf(book, crawler));
    expect(ledgerOf(book, booked).unaccounted).toBeCloseTo(0, 12);
    expect(booked.ledger.at(-1)?.uncertainty).toBeCloseToRelative(
      Math.hypot(ledger.whole?.uncertainty ?? 0, ledger.sum.uncertainty),
      1e-12,
    );
    const light = { ...crawler, vehicle: { ...crawler.vehicle, mass: 0.4 } };
    expect(withBooked(light, ledgerOf(book, light), balanceOf(book, light))).toBe(light);
  });

  it("comes back as it was stored, for every line of the demo", () => {
    for (const line of crawler.ledger)
      expect(readLine(draftOfLine(line), [])).toEqual({
        line: {
          ...line,
          mass: expect.closeTo(line.mass ?? 0, 12),
          ...uncertaintyOf(line.uncertainty),
          alternatives: line.alternatives.map((each) => ({
            ...each,
            mass: expect.closeTo(each.mass, 12),
            ...uncertaintyOf(each.uncertainty),
          })),
        },
      });
  });

  it.each([
    ["name", { name: " " }],
    ["name", { name: "Camera" }],
    ["mass", { mass: "" }],
    ["mass", { mass: "-3 g" }],
    ["mass", { mass: "light" }],
    ["quantity", { quantity: "0" }],
    ["uncertainty", { uncertainty: "-1 g" }],
  ])("names %s, with %o", (field, change) => {
    const read = readLine({ ...typed, ...change }, crawler.ledger);
    expect(Object.keys("problems" in read ? read.problems : {})).toEqual([field]);
  });

  it("takes its place in the build, and leaves it", () => {
    const [first] = crawler.ledger;
    const changed = withLine(crawler, { ...first, mass: 1 }, 0);
    expect(changed.ledger[0].mass).toBe(1);
    expect(withLine(crawler, first, null).ledger).toHaveLength(crawler.ledger.length + 1);
    expect(withoutLine(crawler, 0).ledger).toEqual(crawler.ledger.slice(1));
  });
});
