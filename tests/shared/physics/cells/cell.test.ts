import { describe, expect, it } from "vitest";
import {
  cellAt,
  cellAtVoltage,
  cellResistance,
  chargeAt,
  resistanceVaries,
  standInVoltage,
} from "#shared/physics/cells/cell.ts";

const CELL = {
  curve: [
    [0, 3],
    [0.5, 3.7],
    [1, 4.2],
  ],
  resistance: 0.03,
  resistanceCurve: [
    [0.1, 0.05],
    [0.5, 0.03],
    [0.9, 0.028],
  ],
} as const;

describe("the resistance of a cell by its charge", () => {
  it.each([
    [0, 0.05],
    [0.1, 0.05],
    [0.2, 0.045],
    [0.5, 0.03],
    [0.7, 0.029],
    [1, 0.028],
  ])("at z = %f is %f Ω: straight between its points, as at its ends beyond", (charge, resistance) => {
    expect(cellResistance(CELL, charge)).toBeCloseToRelative(resistance, 1e-12);
    expect(cellAt(CELL, charge).resistance).toBeCloseToRelative(resistance, 1e-12);
  });

  it.each([
    undefined,
    null,
    [],
    [[0.5, 0.03]],
    [
      [0, 0.03],
      [1, 0.03],
    ],
  ] as const)("with the curve %j is the one resistance, exactly", (resistanceCurve) => {
    const cell = { ...CELL, resistanceCurve };
    expect(resistanceVaries(cell)).toBe(false);
    expect([0, 0.3, 1].map((charge) => cellResistance(cell, charge))).toEqual([0.03, 0.03, 0.03]);
    expect(cellAtVoltage(cell, 9)).toEqual({ voltage: 9, resistance: 0.03 });
  });
});

describe("the state of a cell by its voltage", () => {
  it("is that at the charge with this voltage", () => {
    const charge = 0.23;
    const { voltage, resistance } = cellAt(CELL, charge);
    expect(chargeAt(CELL, voltage)).toBeCloseToRelative(charge, 1e-9);
    expect(cellAtVoltage(CELL, voltage).resistance).toBeCloseToRelative(resistance, 1e-9);
  });

  it("beyond its curve has the resistance of the nearer end", () => {
    expect(cellAtVoltage(CELL, 2.5)).toEqual({ voltage: 2.5, resistance: 0.05 });
    expect(cellAtVoltage(CELL, 4.5)).toEqual({ voltage: 4.5, resistance: 0.028 });
    expect(chargeAt(CELL, 2.5)).toBeNull();
  });
});

describe("the stand-in of another resistance", () => {
  it("carries the same current into a resistor: V′ = V(R_0 + R_load)/(R + R_load)", () => {
    const [load, own, other] = [0.6, 0.05, 0.03];
    const standIn = standInVoltage({ voltage: 3.6, resistance: own }, other, (v) => v / (other + load));
    expect(standIn).toBeCloseToRelative((3.6 * (other + load)) / (own + load), 1e-12);
  });

  it("of the same resistance is the cell itself", () => {
    expect(standInVoltage({ voltage: 3.6, resistance: 0.03 }, 0.03, () => Number.NaN)).toBe(3.6);
  });
});
