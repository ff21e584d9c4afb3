// Source: Sunil, Pattipati, Balasingam, IEEE Trans. Instrum. Meas. (2025), MIT (tests/fixtures/cells/SOURCE.md).
import { describe, expect, it } from "vitest";
import { fitDischarge } from "#shared/fit/dischargeFit.ts";
import { CHEMISTRY_TABLES } from "#shared/physics/cells/table.ts";
import { openCircuitCurve } from "#shared/physics/pack.ts";
import { numberFixture } from "#tests/support/csvFixture.ts";
import { heldAgainst } from "#tests/support/outside.ts";

const TABLES = [
  ["lithium-ion", "cell-18650-a"],
  ["lithium-iron-phosphate", "cell-lfp-18650-e"],
] as const;

/** Breakpoints printed with the data set, charge and volts, to four digits: within 4 mV at the steep empty end. */
const PRINTED = {
  "lithium-ion": [
    [0.0201, 3.0068],
    [0.0905, 3.3275],
    [0.1457, 3.4287],
    [0.2814, 3.57],
    [0.4573, 3.6972],
    [0.8442, 4.0595],
    [0.9548, 4.1108],
    [1, 4.1881],
  ],
  "lithium-iron-phosphate": [
    [0.0033, 2.4177],
    [0.0267, 2.9299],
    [0.0534, 3.0872],
    [0.0885, 3.1942],
    [0.2972, 3.2772],
    [0.9833, 3.3511],
    [0.995, 3.418],
    [1, 3.5981],
  ],
} as const;

describe.each(TABLES)("the stored curve of %s", (name, file) => {
  const table = CHEMISTRY_TABLES[name];
  const measured = numberFixture(`cells/${file}.csv`);

  it("against every measured point: within 2 mV", () => {
    const curve = openCircuitCurve(table.curve);
    heldAgainst(file, {
      what: `open-circuit voltage of the cell that the stored curve of ${name} was taken from`,
      source: "Sunil, Pattipati, Balasingam (2025), MIT",
      unit: "mV",
      errors: measured.map(({ soc, ocv_V }) => 1000 * (curve(soc) - ocv_V)),
    });
    const worst = Math.max(...measured.map(({ soc, ocv_V }) => Math.abs(curve(soc) - ocv_V)));
    console.info(`${name}: ${(1000 * worst).toFixed(2)} mV at most, ${table.curve.length} points`);
    expect(worst).toBeLessThan(0.00201);
  });

  it("against the printed breakpoints: within their 4 mV", () => {
    const curve = openCircuitCurve(table.curve);
    for (const [charge, voltage] of PRINTED[name])
      expect(Math.abs(curve(charge) - voltage)).toBeLessThan(0.004);
  });

  // 25 mΩ and a current of 2 A in turn with rests laid over the published curve: the fit takes the sag out again.
  it("loaded and rested: the discharge fit finds the published curve and the resistance laid over it", () => {
    const readings = measured
      .toReversed()
      .filter((_, i) => i % 4 === 0 || i === measured.length - 1)
      .map(({ soc, ocv_V }, i) => {
        const current = i % 2 === 0 ? 0 : 2;
        return { drawn: (1 - soc) * 4000, voltage: ocv_V - 0.025 * current, current };
      });
    const fit = fitDischarge({
      runs: [{ readings, emptied: true }],
      knownResistance: null,
      knownCapacity: null,
    });
    expect(fit.resistance).toBeCloseToRelative(0.025, 0.1);
    const curve = openCircuitCurve(fit.curve);
    // Between readings the published curve bends on; at the charges that were read there is nothing to hide behind.
    const off = readings.map(({ drawn, voltage, current }) => {
      const charge = Math.max(0, Math.min(1, 1 - drawn / 4000));
      return Math.abs(curve(charge) - (voltage + 0.025 * current));
    });
    console.info(
      `${name}: ${(1000 * fit.resistance).toFixed(2)} mΩ of 25, curve within ${(1000 * Math.max(...off)).toFixed(1)} mV`,
    );
    expect(Math.max(...off)).toBeLessThan(0.015);
  });
});
