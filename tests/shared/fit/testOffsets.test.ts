import { describe, expect, it } from "vitest";
import { testOffsets } from "#shared/fit/testOffsets.ts";
import { NotEnoughDataError } from "#shared/numeric/errors.ts";
import { expectAllFinite } from "#tests/support/finite.ts";
import { readingAt } from "#tests/support/rotorReadings.ts";

const PHIS = [0, 0.04, 0.08, 0.12, 0.16, 0.2];
const SPEEDS = [12_000, 18_000, 24_000];

/** Readings of one curve at three speeds, the tachometer of each test wrong by its share. */
const readings = (wrong: readonly number[], noise = 0) =>
  wrong.flatMap((error, test) =>
    PHIS.map((phi, i) => {
      const psi = 1 - 0.5 * phi - 16 * phi ** 2 + noise * Math.sin(5 * i + 11 * test);
      const reading = readingAt({ phi, psi, rpm: SPEEDS[test % 3] });
      return { ...reading, rpm: reading.rpm * (1 + error), test };
    }),
  );

describe("testOffsets, on three tests of one rotor", () => {
  it.each([0.04, -0.03])("finds the one whose tachometer reads %s off, and by how much", (error) => {
    const { tests, warnings } = testOffsets({ diameter: 0.05, points: readings([0, error, 0]) });
    expect(tests[1].offset).toBeCloseToRelative(error, 1e-6);
    expect(Math.abs(tests[0].offset)).toBeLessThan(1e-8);
    expect(Math.abs(tests[2].offset)).toBeLessThan(1e-8);
    expect(tests.map(({ stands }) => stands)).toEqual([false, true, false]);
    expect(warnings[0].message).toContain(error > 0 ? "test 1 by +4.0 %" : "test 1 by \u22123.0 %");
  });

  it("with noise finds it within three standard errors", () => {
    const { tests } = testOffsets({ diameter: 0.05, points: readings([0, 0, 0.05], 0.005) });
    expect(Math.abs(tests[2].offset - 0.05)).toBeLessThan(3 * tests[2].standardError);
    expect(tests[2].standardError).toBeLessThan(0.01);
    expect(tests[2].stands).toBe(true);
  });

  it("without an error says nothing", () => {
    const answer = testOffsets({ diameter: 0.05, points: readings([0, 0, 0], 0.003) });
    expect(answer.warnings).toEqual([]);
    expectAllFinite(answer);
  });
});

describe("testOffsets, on too few tests", () => {
  it("two tests show a difference but not which one is wrong", () => {
    const { warnings, tests } = testOffsets({ diameter: 0.05, points: readings([0, 0.04], 0.001) });
    expect(Math.abs(tests[1].offset - tests[0].offset)).toBeCloseToRelative(0.04, 0.1);
    expect(warnings[0].code).toBe("tests-differ");
  });

  it("one test is refused", () => {
    expect(() => testOffsets({ diameter: 0.05, points: readings([0]) })).toThrow(NotEnoughDataError);
  });
});
