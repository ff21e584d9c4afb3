// Source: RespiraWorks, Apache-2.0 (tests/fixtures/small-blower/SOURCE.md). Computed outside the project from the same
// rows: a cubic leaves an rms of 3.4 % of blocked pressure; blocked, √p is linear in the command and crosses zero at 16 %.
import { describe, expect, it } from "vitest";
import { fitRotor } from "#shared/fit/rotorFit.ts";
import { rotorPoints } from "#shared/fit/rotorPoints.ts";
import { testOffsets } from "#shared/fit/testOffsets.ts";
import { fitThrottleOffset } from "#shared/fit/throttleOffset.ts";
import { evaluatePolynomial } from "#shared/numeric/polynomial.ts";
import { numberFixture, rootMeanSquare } from "#tests/support/csvFixture.ts";
import { heldAgainst } from "#tests/support/outside.ts";

const DIAMETER = 0.07;
const SPEEDS = [21818, 24000, 26666];

const readings = numberFixture("small-blower/binned.csv").map((row) => ({
  rpm: row.rpm_nominal,
  flow: row.Q_Lpm / 60_000,
  pressure: 1000 * row.p_static_kPa,
  test: SPEEDS.indexOf(row.rpm_nominal),
}));

describe("a small blower at three nominal speeds", () => {
  const fit = fitRotor({ diameter: DIAMETER, points: readings });
  const misses = rotorPoints(DIAMETER, readings).map(
    (point) => (point.psi - evaluatePolynomial(fit.psi, point.phi)) / fit.psi[0],
  );

  heldAgainst("small-blower", {
    what: "pressure of a small blower at three nominal speeds, by one curve of all; of blocked pressure",
    source: "RespiraWorks, Apache-2.0",
    unit: "%",
    errors: misses.map((miss) => -100 * miss),
  });

  it("collapses to an rms of 4 % of blocked pressure or less", () => {
    const rms = rootMeanSquare(misses);
    console.info(`small-blower: ${fit.reason}; rms ${(100 * rms).toFixed(2)} % of blocked pressure`);
    for (const [test, rpm] of SPEEDS.entries()) {
      const own = misses.filter((_, i) => readings[i].test === test);
      const mean = own.reduce((sum, miss) => sum + miss, 0) / own.length;
      console.info(
        `  ${rpm} rpm: mean ${(100 * mean).toFixed(2)} %, rms ${(100 * rootMeanSquare(own)).toFixed(2)} %`,
      );
    }
    expect(rms).toBeLessThanOrEqual(0.04);
    expect(rms).toBeCloseToRelative(0.034, 0.01);
  });

  it("is explained by nominal speeds wrong by about 1.5 %", () => {
    const offsets = testOffsets({ diameter: DIAMETER, points: readings }).tests;
    for (const { test, offset, standardError } of offsets)
      console.info(
        `  ${SPEEDS[test]} rpm reads ${(100 * offset).toFixed(2)} ± ${(100 * standardError).toFixed(2)} % off the others`,
      );
    const largest = Math.max(...offsets.map(({ offset }) => Math.abs(offset)));
    expect(largest).toBeGreaterThan(0.01);
    expect(largest).toBeLessThan(0.05);
  });
});

describe("the same blower blocked, at 61 throttle commands", () => {
  it("shows a throttle offset of 16 %", () => {
    const rows = numberFixture("small-blower/blocked.csv");
    const fit = fitThrottleOffset(
      rows.map((row) => ({
        command: row.power_pct / 100,
        response: Math.sqrt(Math.max(0, row.p_mean_raw)),
      })),
    );
    console.info(
      `small-blower blocked: offset ${(100 * fit.offset).toFixed(2)} %, ${fit.used.length} points used, ${fit.saturated.length} saturated`,
    );
    // printed as a whole percent
    expect(Math.abs(fit.offset - 0.16)).toBeLessThan(0.005);
    expect(fit.saturated.length).toBeGreaterThan(10);
  });
});
