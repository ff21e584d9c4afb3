// Source: Sunil, Pattipati, Balasingam, IEEE Trans. Instrum. Meas. (2025), MIT (tests/fixtures/cells/SOURCE.md).
import { describe, expect, it } from "vitest";
import { CHEMISTRY_TABLES } from "#shared/physics/cells/table.ts";
import { openCircuitCurve } from "#shared/physics/pack.ts";
import { numberFixture } from "#tests/support/csvFixture.ts";
import { heldAgainst } from "#tests/support/outside.ts";

/** Breakpoints printed with the data set for two lithium-ion cells of 21700 size, charge and volts, to four digits: within 4 mV at the steep empty end. */
const PRINTED = {
  "cell-21700-c": [
    [0, 2.5],
    [0.005, 2.808],
    [0.0352, 3.1179],
    [0.0854, 3.3182],
    [0.1357, 3.4193],
    [0.2915, 3.5826],
    [0.4523, 3.6941],
    [0.8392, 4.0664],
    [0.9548, 4.1121],
    [1, 4.2],
  ],
  "cell-21700-d": [
    [0, 2.5199],
    [0.0151, 2.9068],
    [0.0452, 3.1409],
    [0.1106, 3.3301],
    [0.1809, 3.4544],
    [0.3116, 3.586],
    [0.4824, 3.7012],
    [0.8492, 4.0666],
    [0.9598, 4.1238],
    [1, 4.1943],
  ],
} as const;

const measured = (cell: string) =>
  numberFixture(`cells/${cell}.csv`).map(({ soc, ocv_V }): [number, number] => [soc, ocv_V]);

describe.each(["cell-21700-c", "cell-21700-d"] as const)("the measured curve of %s", (cell) => {
  const rows = measured(cell);

  it("goes through its printed breakpoints, within their 4 mV", () => {
    const curve = openCircuitCurve(rows);
    for (const [charge, voltage] of PRINTED[cell])
      expect(Math.abs(curve(charge) - voltage)).toBeLessThan(0.004);
  });

  // The word on the pack's page: within 0.05 V above a tenth of the charge, within 0.21 V below, read at each hundredth.
  it("lies as near to the stored lithium-ion curve as its caveat says", () => {
    const [stored, curve] = [openCircuitCurve(CHEMISTRY_TABLES["lithium-ion"].curve), openCircuitCurve(rows)];
    const errors = Array.from({ length: 101 }, (_, i) => stored(i / 100) - curve(i / 100));
    const off = errors.map(Math.abs);
    heldAgainst(cell, {
      what: `open-circuit voltage of another lithium-ion cell, ${cell.replace("cell-", "")}, by the stored curve, at each hundredth of charge`,
      source: "Sunil, Pattipati, Balasingam (2025), MIT",
      unit: "mV",
      errors: errors.map((error) => 1000 * error),
    });
    const [below, above] = [Math.max(...off.slice(0, 10)), Math.max(...off.slice(10))];
    console.info(
      `${cell}: ${(1000 * above).toFixed(0)} mV above a tenth, ${(1000 * below).toFixed(0)} mV below`,
    );
    expect(above).toBeLessThan(0.05);
    expect(below).toBeLessThan(0.21);
    const { caveat } = CHEMISTRY_TABLES["lithium-ion"];
    expect(caveat).toContain("within 0.05 V of it above a tenth of the charge, within 0.21 V below");
  });
});

describe("the two cells, together", () => {
  it("need the caveat's figures: one of them comes within a tenth of each", () => {
    const stored = openCircuitCurve(CHEMISTRY_TABLES["lithium-ion"].curve);
    const off = ["cell-21700-c", "cell-21700-d"].map((cell) => {
      const curve = openCircuitCurve(measured(cell));
      return Array.from({ length: 101 }, (_, i) => Math.abs(curve(i / 100) - stored(i / 100)));
    });
    expect(Math.max(...off.flatMap((each) => each.slice(10)))).toBeGreaterThan(0.9 * 0.05);
    expect(Math.max(...off.flatMap((each) => each.slice(0, 10)))).toBeGreaterThan(0.9 * 0.21);
  });
});
