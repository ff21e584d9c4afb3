// Source: Sunil, Pattipati, Balasingam, IEEE Trans. Instrum. Meas. (2025), MIT (tests/fixtures/cells/SOURCE.md).
import { describe, expect, it } from "vitest";
import { openCircuitCurve } from "#shared/physics/pack.ts";
import { runDown } from "#shared/physics/rundown.ts";
import { numberFixture, rootMeanSquare } from "#tests/support/csvFixture.ts";
import { PANE_CRAWLER } from "#tests/support/paneCrawler.ts";

type Point = [number, number];
const measured = (cell: string): Point[] =>
  numberFixture(`cells/${cell}.csv`).map(({ soc, ocv_V }) => [soc, ocv_V]);

/** Straight lines between the points: charge at a voltage, and voltage at a charge. */
function between(points: readonly Point[], from: 0 | 1, value: number): number {
  const i = points.findIndex((point) => point[from] >= value);
  const [a, b] = [points[Math.max(0, i - 1)], points[i]];
  const share = a === b ? 0 : (value - a[from]) / (b[from] - a[from]);
  const to = from === 0 ? 1 : 0;
  return a[to] + share * (b[to] - a[to]);
}

const CELLS = [
  ["cell-18650-a", 3],
  ["cell-lfp-18650-e", 2.8],
] as const;

describe.each(CELLS)("run-down of the measured curve of %s to %s V", (cell, minimumVoltage) => {
  const curve = measured(cell);

  // λ = 0 and a sealed skirt leave the motor's friction: I = M_c/k_t + I_aux at any voltage. It ends where V_oc = V_min + R·I.
  it("at a constant current: ends when the table's charge is drawn, read off by straight lines", () => {
    const { frictionTorque, kv } = PANE_CRAWLER.motor;
    const current = (frictionTorque * 2 * Math.PI * kv) / 60 + PANE_CRAWLER.supply.auxCurrent;
    const { end } = runDown({
      ...PANE_CRAWLER,
      motor: { ...PANE_CRAWLER.motor, viscousTorque: 0 },
      rotor: { ...PANE_CRAWLER.rotor, lambda: [0] },
      skirt: { ...PANE_CRAWLER.skirt, gap: 0 },
      pack: {
        series: 2,
        parallel: 1,
        wireResistance: 0,
        cell: { capacity: 900, minimumVoltage, resistance: 0.03, curve },
      },
    });
    const last = between(curve, 1, minimumVoltage + 0.03 * current);
    expect(end.reason).toBe("minimum-voltage");
    // The curve leaves the straight line between two neighbours (0.5 % of charge apart at most) by far less than their distance.
    expect(Math.abs(end.time - (900 * (1 - last)) / current)).toBeLessThan((0.0005 * 900) / current);
  });

  it("through every tenth point: the curve meets the points between better than straight lines do", () => {
    const coarse = curve.filter((_, i) => i % 10 === 0 || i === curve.length - 1);
    const cubic = openCircuitCurve(coarse);
    const error = (voltage: (charge: number) => number) =>
      rootMeanSquare(curve.map(([charge, ocv]) => voltage(charge) - ocv));
    const [curved, straight] = [error(cubic), error((charge) => between(coarse, 0, charge))];
    console.info(
      `${cell}: ${(1000 * curved).toFixed(2)} mV by curve, ${(1000 * straight).toFixed(2)} mV by lines`,
    );
    expect(curved).toBeLessThan(straight);
  });
});
