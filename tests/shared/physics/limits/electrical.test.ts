import { describe, expect, it } from "vitest";
import { type ElectricalState, electricalNotes, overVoltage } from "#shared/physics/limits/electrical.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";

const state: ElectricalState = {
  motorVoltage: 3.5,
  ratedVoltage: 3.7,
  motorCurrent: 2,
  ratedCurrent: 2.5,
  windingTemperature: 340,
  windingLimit: 393.15,
  cellCurrent: 4,
  cellCurrentLimit: 10,
  cellVoltage: 3.6,
  cellMinimumVoltage: 3,
};

describe("over-voltage", () => {
  it("by a fifth makes 1.44 of the pressure and 1.728 of the heat", () => {
    const { ratio, pressureRatio, heatRatio } = overVoltage(4.44, 3.7);
    expect(ratio).toBeCloseTo(1.2, 14);
    expect(pressureRatio).toBeCloseTo(1.44, 14);
    expect(heatRatio).toBeCloseTo(1.728, 14);
  });

  it("refuses voltages that are none", () => {
    expectOutOfRange(() => overVoltage(0, 3.7), "motor.voltage");
    expectOutOfRange(() => overVoltage(3.7, 0), "motor.ratedVoltage");
  });
});

describe("electricalNotes", () => {
  it("within all limits are none, on each limit as well", () => {
    expect(electricalNotes(state)).toEqual([]);
    expect(electricalNotes({ ...state, motorVoltage: 3.7, motorCurrent: 2.5, cellVoltage: 3 })).toEqual([]);
  });

  it.each([
    ["motor-over-voltage", { motorVoltage: 4.2 }, "129 %"],
    ["motor-over-current", { motorCurrent: 2.6 }, "2.60 A"],
    ["winding-too-hot", { windingTemperature: 400 }, "127 °C"],
    ["cell-over-current", { cellCurrent: 11 }, "11.0 A"],
    ["cell-under-voltage", { cellVoltage: 2.95 }, "2.95 V"],
  ])("beyond a limit say %s of %o", (code, change, word) => {
    const notes = electricalNotes({ ...state, ...change });
    expect(notes.map((note) => note.code)).toEqual([code]);
    expect(notes[0]?.message).toContain(word);
  });

  it("of limits that nobody knows are none", () => {
    const unknown = {
      ratedVoltage: null,
      ratedCurrent: null,
      windingLimit: null,
      cellCurrentLimit: null,
      cellMinimumVoltage: null,
    };
    const extreme = {
      motorVoltage: 50,
      motorCurrent: 50,
      windingTemperature: 900,
      cellCurrent: 90,
      cellVoltage: 0,
    };
    expect(electricalNotes({ ...state, ...extreme, ...unknown })).toEqual([]);
  });

  it.each([
    ["motor.voltage", { motorVoltage: Number.NaN }],
    ["motor.voltage limit", { ratedVoltage: 0 }],
    ["winding.temperature", { windingTemperature: Number.NaN }],
    ["cell.current limit", { cellCurrentLimit: Number.NaN }],
    ["cell.voltage", { cellVoltage: Number.NaN }],
    ["cell.minimumVoltage", { cellMinimumVoltage: 0 }],
  ])("refuse by %s what is %o", (quantity, change) => {
    expectOutOfRange(() => electricalNotes({ ...state, ...change }), quantity);
  });
});
