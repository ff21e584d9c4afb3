// Source: Ai, Kraft, Sturm, Jossen, Wu, J. Electrochem. Soc. 167 (2020) 013512, data files of PyBaMM, BSD-3-Clause (tests/fixtures/cells/SOURCE.md).
import { describe, expect, it } from "vitest";
import { openCircuitPoints } from "#shared/fit/dischargeCurve.ts";
import { fitDischarge, resistanceCurveOf } from "#shared/fit/dischargeFit.ts";
import { cellAt } from "#shared/physics/cells/cell.ts";
import { numberFixture, rootMeanSquare } from "#tests/support/csvFixture.ts";
import { heldAgainst } from "#tests/support/outside.ts";

/** 1 C [A]. */
const RATED = 2.28;
/** Below this charge the voltage falls by 5 mV a thousandth of it: what a test is read to there says more than the cell. */
const KNEE = 0.02;

const rows = numberFixture("cells/pouch-discharges.csv");

const runAt = (rate: number) => ({
  emptied: true,
  readings: rows
    .filter(({ rate_C }) => rate_C === rate)
    .map(({ time_s, voltage_V }) => ({
      drawn: rate * RATED * time_s,
      voltage: voltage_V,
      current: rate * RATED,
    })),
});

const fit = fitDischarge({ runs: [runAt(0.5), runAt(2)], knownResistance: null, knownCapacity: null });

/** Predicted less measured at 1 C, above the knee [V]. */
function errorsAt1C(cell: Parameters<typeof cellAt>[0]): number[] {
  return runAt(1)
    .readings.map((row) => ({ ...row, charge: 1 - row.drawn / fit.capacity }))
    .filter(({ charge }) => charge > KNEE)
    .map(({ charge, current, voltage }) => {
      const at = cellAt(cell, charge);
      return at.voltage - at.resistance * current - voltage;
    });
}

describe("a cell discharged at half and at twice its rated current", () => {
  it("tells its resistance by charge: it rises towards empty, to nearly twice", () => {
    expect(fit.resistanceFrom).toBe("discharges");
    const told = fit.resistanceByCharge ?? [];
    expect(told.length).toBeGreaterThanOrEqual(5);
    const each = told.map(({ resistance }) => resistance);
    expect(each).toEqual([...each].sort((a, b) => b - a));
    expect(each[0] / each[each.length - 1]).toBeGreaterThan(1.5);
  });

  it("predicts its voltage at the rated current between them, twice as well as one resistance for all charges", () => {
    const { resistance } = fit;
    const byCharge = errorsAt1C({ curve: fit.curve, resistance, resistanceCurve: resistanceCurveOf(fit) });
    const readings = [0.5, 2].flatMap((rate) =>
      runAt(rate).readings.map((row) => ({ ...row, charge: 1 - row.drawn / fit.capacity })),
    );
    const one = errorsAt1C({ curve: openCircuitPoints(readings, () => resistance).curve, resistance });
    heldAgainst("pouch-discharges", {
      what: "loaded voltage of a cell at its rated current, by discharges at half and at twice of it, above 2 % charge",
      source: "Ai et al. (2020), data files of PyBaMM, BSD-3-Clause",
      unit: "mV",
      errors: byCharge.map((error) => 1000 * error),
    });
    console.info(
      `rms ${(1000 * rootMeanSquare(byCharge)).toFixed(1)} mV, one R ${(1000 * rootMeanSquare(one)).toFixed(1)} mV`,
    );
    expect(rootMeanSquare(byCharge)).toBeLessThan(0.01);
    expect(rootMeanSquare(byCharge)).toBeLessThan(rootMeanSquare(one) / 2);
  });
});
