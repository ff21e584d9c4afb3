import { describe, expect, it } from "vitest";
import {
  type PropellerPage,
  propellerPage,
  thrustContributions,
} from "#client/views/curves/propeller/propellerData.ts";
import { coefficientPlot, thrustResidualPlot } from "#client/views/curves/propeller/propellerPlots.ts";
import { driftText, propellerSentence } from "#client/views/curves/propeller/propellerSentence.ts";
import { demoBook } from "#tests/support/demoBook.ts";
import { expectAllFinite } from "#tests/support/finite.ts";
import { type ThrustRowTexts, thrustBook, thrustTest } from "#tests/support/thrustBook.ts";

const pageOf = (...tests: object[]): PropellerPage => {
  const page = propellerPage(thrustBook({ tests }), "prop");
  if (!page) throw new Error("no page");
  return page;
};

/** C_T of 0.12 in air of 1.2 kg/m³, written out; the tachometer's error as a factor. */
const row = (rpm: number, read = 1): ThrustRowTexts[number] => ({
  rpm: rpm * read,
  grams: (1000 * 0.12 * 1.2 * (rpm / 60) ** 2 * 0.127 ** 4) / 9.80665,
  amps: 1 + (rpm / 6000) ** 2,
});
const SPEEDS = [6000, 8000, 10_000, 12_000];

describe("a propeller's page", () => {
  it("of the demo: draws both coefficients, their line and band, and says the drift in percent", () => {
    const page = propellerPage(demoBook(), "pusher-three");
    if (!page?.fit) return expect.fail("no fit");
    for (const which of ["thrust", "power"] as const) {
      const plot = coefficientPlot(page, which);
      expect(plot.marks).toHaveLength(14);
      expect(plot.bands).toHaveLength(1);
      expect(plot.lines?.map((line) => line.style)).toEqual(["dashed", "solid", "dashed"]);
      expectAllFinite(plot);
    }
    expectAllFinite(thrustResidualPlot(page));
    expect(driftText(page.fit, "thrust")).toMatch(/^(rises|falls) by .*%$|^shows no drift$/);
    expect(propellerSentence(page)).toMatch(
      /C_T 0\.1\d+ ± 0\.\d+ and C_P 0\.0\d+ ± 0\.\d+, from 14 readings of 2 tests/,
    );
  });

  it("with a test whose tachometer reads 2 % high: that test's thrusts lie about 4 % below the other's", () => {
    const wrong = SPEEDS.map((rpm) => row(rpm, 1.02));
    const [right, off] = thrustContributions(
      pageOf(thrustTest(SPEEDS.map((rpm) => row(rpm))), thrustTest(wrong)),
    );
    // C_T falls by 1/1.02² − 1 = −3.9 %
    expect((off.off ?? 0) - (right.off ?? 0)).toBeCloseTo(-0.039, 2);
  });

  it("with one row: a point, no band, and no NaN", () => {
    const page = pageOf(thrustTest([row(9000)]));
    expect(coefficientPlot(page, "thrust").bands).toEqual([]);
    expectAllFinite(coefficientPlot(page, "thrust"));
    expect(propellerSentence(page)).toMatch(/from 1 reading of 1 test/);
  });

  it("with a turned scale: keeps the points, no line, and names the scale", () => {
    const page = pageOf(thrustTest(SPEEDS.map((rpm) => ({ ...row(rpm), grams: -row(rpm).grams }))));
    expect(page.fit).toBeNull();
    expect(page.missing?.message).toMatch(/sign of the scale/);
    expectAllFinite(coefficientPlot(page, "thrust"));
  });

  it("with every row set aside: shows them as such and draws nothing through them", () => {
    const page = pageOf(thrustTest(SPEEDS.map((rpm) => ({ ...row(rpm), setAside: "stand fell over" }))));
    expect(page.readings).toHaveLength(4);
    expect(thrustContributions(page)[0].used).toBe(0);
    expectAllFinite(coefficientPlot(page, "thrust"));
  });

  it("without a test: says that nothing is known", () => {
    expect(propellerSentence(pageOf())).toMatch(/not known yet/);
  });
});
