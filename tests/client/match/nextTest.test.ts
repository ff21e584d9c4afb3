import { describe, expect, it } from "vitest";
import { solve } from "#client/state/outcome.ts";
import { replyTo } from "#client/views/match/nextTest/answer.ts";
import { linkOf } from "#client/views/match/nextTest/links.ts";
import {
  correctsText,
  headline,
  knownText,
  lesserText,
  nothingText,
  verdictWords,
} from "#client/views/match/nextTest/nextTestWords.ts";
import { questionOf } from "#client/views/match/nextTest/question.ts";
import { newestFirst } from "#shared/book/newestFirst.ts";
import { type NextTest, nextTests } from "#shared/book/nextTest/nextTests.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const spread = (p5: number | null, p95: number | null) => ({ p5, p50: 1.08, p95, holds: 0.9 });
const plate: NextTest = {
  key: "plate",
  kind: "curve",
  title: "Calibrate the bleed plate",
  takes: "a bag",
  corrects: ["newest", "older"],
  cut: 0.3,
  after: spread(1.04, 1.12),
};
const book = demoBook();

function outcomeOf(id: string, changedBook = book) {
  const build = changedBook.builds.find((each) => each.id === id);
  if (!build) throw new Error(`The demo has no ${id}.`);
  return solve(changedBook, build.data);
}

describe("words of the next test", () => {
  it("of a test that cuts: what to do first, for which verdict, and what would be known then", () => {
    expect(headline(plate, "the roof pane at 153°")).toBe(
      "Calibrate the bleed plate first: it would take 30\u202f% off the uncertainty about the roof pane at 153°.",
    );
    expect(knownText(spread(1.03, 1.13), plate)).toBe("1.08 ± 0.05 → ± 0.04\u202f×");
    expect(correctsText(plate)).toBe("stands in 2 tests of these parts");
  });

  it("of a small cut: takes as many decimals as show it", () => {
    expect(knownText(spread(1.038, 1.122), { after: spread(1.039, 1.121) })).toBe(
      "1.08 ± 0.042 → ± 0.041\u202f×",
    );
    expect(lesserText([{ cut: 0.04 }, { cut: 0.02 }])).toBe("two more, 4\u202f% and less");
  });

  it("where nothing cuts: says so, and what the uncertainty is made of", () => {
    const source = { from: "stated", what: "load share of Square lip", test: null } as const;
    const part = { key: source.what, what: source.what, share: 0.62, source, paths: ["vehicle.skirtShare"] };
    const answered = { before: spread(1.03, 1.13), over: null, tests: [] };
    const text = nothingText(answered, "the wall at 90°", [part]);
    expect(text).toMatch(
      /^No single test would take 1\u202f% off the uncertainty about the wall at 90°: 1\.08 ± 0\.05/,
    );
    expect(text).toMatch(/62\u202f%, comes from load share of Square lip, which no bench test tells/);
    const tested = { ...part, source: { ...source, from: "fit", test: "curve" } as const };
    expect(nothingText(answered, "the wall at 90°", [tested])).toMatch(
      /one more such test would change little/,
    );
  });

  it("where some samples need no pull: says that there is no margin that could be uncertain", () => {
    const text = nothingText({ before: spread(1.03, null), over: null, tests: [] }, "the slope at 8°", []);
    expect(text).toBe(
      "Some samples need no pull at all for the slope at 8°: there is no margin that could be uncertain.",
    );
  });

  it.each([
    [plate, "/bench/newest", "correct it"],
    [{ ...plate, kind: "leak", corrects: [] }, "/bench/new/leak?skirt=lip&surface=pane", "log it"],
    [{ ...plate, kind: "curve", corrects: [] }, "/bench/new/curve?rotor=r&diameter=44+mm&motor=m", "log it"],
    [{ ...plate, kind: "friction", corrects: [] }, "/bench/new/friction?surface=pane", "log it"],
    [{ ...plate, kind: null, corrects: [] }, "/parts/builds/b1", "state it"],
  ] as const)(
    "of a plate, a test and the scale: links to where each is put down, with the build's parts",
    (test, address, words) => {
      expect(
        linkOf(test, {
          id: "b1",
          diameter: 0.044,
          rotor: "r",
          motor: "m",
          pack: "p",
          skirt: "lip",
          surface: "pane",
          gear: null,
        }),
      ).toEqual({ address, words });
    },
  );
});

describe("question of the next test", () => {
  it("of the worst attitude, driving: takes the angle that is worst driving, and no more of the book than the build rests on", () => {
    const outcome = outcomeOf("roof-crawler");
    const question = questionOf(book, outcome, { attitude: "worst", mode: "driving" });
    if (!question) throw new Error("no question");
    expect(question.verdict).toEqual({ angle: outcome.prediction?.worst.driving.angle, mode: "driving" });
    expect(question.book.tests.length).toBeLessThan(book.tests.length);
    expect(verdictWords(outcome, question)).toMatch(/^the worst attitude at \d+°, driving$/);
  });

  it("of one of the build's own attitudes: calls it by its name", () => {
    const outcome = outcomeOf("roof-crawler");
    const question = questionOf(book, outcome, { attitude: 153, mode: "parked" });
    expect(question && verdictWords(outcome, question)).toBe("the roof pane at 153°");
  });

  it("of a build without numbers: is none", () => {
    const changedBook = { ...book, surfaces: [] };
    expect(
      questionOf(changedBook, outcomeOf("roof-crawler", changedBook), { attitude: "worst", mode: "parked" }),
    ).toBeNull();
  });

  // Few samples: which cut is the greatest hardly depends on how many.
  it.each(book.builds.map(({ id }) => id))("of %s: is answered, the greatest cut first", (id) => {
    const question = questionOf(book, outcomeOf(id), { attitude: "worst", mode: "driving" });
    if (!question) throw new Error("no question");
    const { before, tests } = nextTests(question.book, question.build, question.verdict, { samples: 128 });
    expect(before?.p50).toBeGreaterThan(0);
    expect(tests.length).toBeGreaterThan(0);
    expect(tests.map(({ cut }) => cut)).toEqual(tests.map(({ cut }) => cut).sort((a, b) => b - a));
  });

  it("of a propeller's build, as the thread answers it: the same tests as by the book as a whole, the newest first", () => {
    const question = questionOf(book, outcomeOf("prop-scout"), { attitude: "worst", mode: "driving" });
    if (!question) throw new Error("no question");
    const whole = { ...book, tests: newestFirst(book.tests) };
    expect(replyTo(question)).toEqual({ answered: nextTests(whole, question.build, question.verdict) });
  });

  it("of a vehicle that can't be: says so in words", () => {
    const question = questionOf(book, outcomeOf("roof-crawler"), { attitude: "worst", mode: "parked" });
    if (!question) throw new Error("no question");
    const { build } = question;
    const reply = replyTo({ ...question, build: { ...build, vehicle: { ...build.vehicle, mass: -1 } } });
    expect(reply).toHaveProperty("problem", expect.stringMatching(/mass.*\.$/));
  });
});
