import { describe, expect, it } from "vitest";
import type { RotorFamily } from "#client/views/curves/rotor/family.ts";
import { missingSentence, rotorSentence } from "#client/views/curves/rotor/sentence.ts";

function family(answer: object, tests: readonly string[]): RotorFamily {
  return {
    rotor: { data: { name: "Fern" } },
    answer: { testedDiameters: [0.038, 0.044], ...answer },
    readings: tests.map((testId) => ({ testId, aside: null })),
  } as unknown as RotorFamily;
}

describe("rotorSentence", () => {
  it("names tests, sizes and uncertainty, for a measured family", () => {
    expect(rotorSentence(family({ basis: "measured" }, ["a", "a", "b", "c"]), 0.014)).toBe(
      "The curve of Fern is known from 3 tests at 2 sizes to ±\u202f1.4\u202f% of blocked pressure.",
    );
  });

  it("says what is assumed, for a curve whose points leave no residual", () => {
    const text = rotorSentence(family({ basis: "measured" }, ["a"]), null);
    expect(text).toMatch(/^The curve of Fern is drawn from 1 test /);
    expect(text).toMatch(/: ±\s30\s% is assumed\.$/);
  });

  it.each([
    ["two-point", /is based on two flows only, from 1 test at 2 sizes: ±\s30\s% is assumed/],
    ["estimated", /estimated from its shape, ±\s30\s%/],
    ["missing", /^The curve of Fern is not known yet\.$/],
  ])("says what a curve that is %s rests on", (basis, expected) => {
    expect(rotorSentence(family({ basis }, ["a"]), 0.02)).toMatch(expected);
  });
});

describe("missingSentence", () => {
  const missing = { count: 2, from: "0.1", to: "0.2", unit: "L/s", at: "", shrinks: 0.48 };

  it("says that readings between two flows would halve the band", () => {
    expect(missingSentence(missing)).toBe(
      "Two more readings between 0.1 and 0.2 L/s would halve the widest band.",
    );
  });

  it("says by how much, where they do less or far more than halve it", () => {
    expect(missingSentence({ ...missing, shrinks: 0.83 })).toMatch(/cut the widest band by 17\s%/);
    expect(missingSentence({ ...missing, shrinks: 0.2 })).toMatch(/down to 20\s% of what it is/);
  });

  it("names one place and the state, for one reading at one flow", () => {
    expect(missingSentence({ ...missing, count: 1, to: "0.1", at: "at 9000 rpm" })).toBe(
      "One more reading at 0.1 L/s (at 9000 rpm) would halve the widest band.",
    );
  });

  it("asks for nothing where nothing helps", () => {
    expect(missingSentence(null)).toMatch(/hardly narrow the band/);
  });
});
