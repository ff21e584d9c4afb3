import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { uncertaintyOf } from "#shared/decide/uncertainty.ts";
import { predict } from "#shared/physics/predict.ts";
import { PANE_CRAWLER } from "#tests/support/paneCrawler.ts";

/** Normal table, tests/fixtures/normal-table (Abramowitz & Stegun, table 26.1). */
const TABLE = readFileSync(new URL("../../fixtures/normal-table/normal.csv", import.meta.url), "utf8")
  .trim()
  .split("\n")
  .slice(1)
  .map((line) => line.split(",").map(Number));

const GRAVITY = 9.80665;
const [WALL, CEILING] = [90, 180];
/** Low and square, so that on the wall it slides long before it tips. */
const crawler = {
  ...PANE_CRAWLER,
  pack: { series: 2, parallel: 1, openCircuitVoltage: 3.8, cellResistance: 0.026, wireResistance: 0.014 },
  vehicle: { ...PANE_CRAWLER.vehicle, cgHeight: 0.001 },
};
const { suction } = predict(crawler);
/** Half a sample of 2048, and what the table's digits leave. */
const COUNTING = 1 / 2048 + 1e-9;

describe("chance of holding against the normal table", () => {
  // Ceiling: F ≥ m·g, so P = Φ[(F/g − m)/u(m)].
  it.each(TABLE)("mass alone uncertain, %s uncertainties in hand on the ceiling: %s", (z, share) => {
    const u = 0.005;
    const vehicle = { ...crawler.vehicle, mass: suction / GRAVITY - z * u };
    const { attitudes } = uncertaintyOf(
      { ...crawler, vehicle },
      { uncertainty: { "vehicle.mass": u }, angles: [CEILING] },
    );
    expect(Math.abs(attitudes[0].parked.holds - share)).toBeLessThanOrEqual(COUNTING);
  });

  // Wall, parked: μ·F − m·g ≥ 0 is linear in μ and m, of variance F²u²(μ) + g²u²(m) − 2·F·g·u(μ, m) (JCGM 100:2008, equation 13).
  for (const correlation of [-0.8, 0, 0.8])
    it.each(TABLE)(
      `friction and mass uncertain together at r = ${correlation}, %s uncertainties in hand on the wall: %s`,
      (z, share) => {
        const [ofFriction, ofMass] = [0.03, 0.02];
        const both = correlation * ofFriction * ofMass;
        const sd = Math.sqrt(
          (suction * ofFriction) ** 2 + (GRAVITY * ofMass) ** 2 - 2 * suction * GRAVITY * both,
        );
        const mass = (crawler.vehicle.wheelFriction * suction - z * sd) / GRAVITY;
        const { attitudes, samplingError } = uncertaintyOf(
          { ...crawler, vehicle: { ...crawler.vehicle, mass } },
          {
            uncertainty: {},
            correlated: [
              {
                paths: ["vehicle.wheelFriction", "vehicle.mass"],
                covariance: [
                  [ofFriction ** 2, both],
                  [both, ofMass ** 2],
                ],
              },
            ],
            angles: [WALL],
          },
        );
        expect(Math.abs(attitudes[0].parked.holds - share)).toBeLessThanOrEqual(
          Math.max(COUNTING, samplingError[0].parked),
        );
      },
    );
});
