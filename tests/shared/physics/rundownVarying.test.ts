import { describe, expect, it } from "vitest";
import { stateOf } from "#shared/decide/limits/state.ts";
import { cellAt } from "#shared/physics/cells/cell.ts";
import { predict } from "#shared/physics/predict.ts";
import { predictPropeller } from "#shared/physics/propeller.ts";
import { type RundownInput, runDown } from "#shared/physics/rundown.ts";
import { PANE_CRAWLER, PANE_PROPELLER } from "#tests/support/paneCrawler.ts";

const CURVE = [
  [0, 3],
  [0.05, 3.4],
  [0.3, 3.65],
  [0.7, 3.85],
  [1, 4.18],
] as const;
const RISING = [
  [0.05, 0.06],
  [0.3, 0.035],
  [0.9, 0.026],
] as const;
const CELL = { capacity: 700, minimumVoltage: 3, resistance: 0.03, curve: CURVE };

const withCurve = (
  resistanceCurve: readonly (readonly [number, number])[] | null,
  base: Omit<RundownInput, "pack"> = PANE_CRAWLER,
): RundownInput => ({
  ...base,
  pack: { series: 2, parallel: 1, wireResistance: 0.014, cell: { ...CELL, resistanceCurve } },
});
const OPEN = { ...PANE_CRAWLER, rotor: PANE_PROPELLER };
const level = (resistance: number) => [[0.5, resistance]] as const;

describe("a run-down with a resistance that is the same at every charge", () => {
  it.each([
    null,
    level(0.03),
    [
      [0, 0.03],
      [1, 0.03],
    ] as const,
  ])("by the curve %j is that of one, to the last digit", (curve) => {
    const { resistanceCurve: _, ...cell } = withCurve(null).pack.cell;
    const one = { ...withCurve(null), pack: { ...withCurve(null).pack, cell } };
    expect(runDown(withCurve(curve))).toEqual(runDown(one));
  });

  it("by a curve of another value is that of the other resistance", () => {
    const other = withCurve(level(0.05));
    const one = withCurve(null);
    const plain = { ...one, pack: { ...one.pack, cell: { ...one.pack.cell, resistance: 0.05 } } };
    expect(runDown(other).end.time).toBeCloseToRelative(runDown(plain).end.time, 1e-12);
  });
});

describe("a run-down whose cells' resistance rises towards empty", () => {
  it.each([0.9, 0.3, 0.12])("sags at z = %f as a prediction with that resistance does", (charge) => {
    const run = runDown({ ...withCurve(RISING), startCharge: charge });
    const { voltage, resistance } = cellAt({ ...CELL, resistanceCurve: RISING }, charge);
    const pack = {
      series: 2,
      parallel: 1,
      wireResistance: 0.014,
      cellResistance: resistance,
      openCircuitVoltage: voltage,
    };
    const { point, suction } = predict({ ...PANE_CRAWLER, pack }, []);
    const [first] = run.samples;
    expect(first.packCurrent).toBeCloseToRelative(point?.packCurrent ?? Number.NaN, 1e-9);
    expect(first.packVoltage).toBeCloseToRelative(point?.packVoltage ?? Number.NaN, 1e-9);
    expect(first.suction).toBeCloseToRelative(suction, 1e-9);
    expect(first.cellVoltage).toBeCloseToRelative(voltage - resistance * first.packCurrent, 1e-9);
    const state = stateOf({ ...withCurve(RISING), startCharge: charge });
    expect(state.cellVoltage).toBeCloseToRelative(first.cellVoltage, 1e-9);
  });

  it("with a propeller likewise", () => {
    const run = runDown({ ...withCurve(RISING, OPEN), startCharge: 0.12 });
    const { voltage, resistance } = cellAt({ ...CELL, resistanceCurve: RISING }, 0.12);
    const pack = {
      series: 2,
      parallel: 1,
      wireResistance: 0.014,
      cellResistance: resistance,
      openCircuitVoltage: voltage,
    };
    const { point } = predictPropeller({ ...OPEN, pack }, []);
    expect(run.samples[0].packCurrent).toBeCloseToRelative(point?.packCurrent ?? Number.NaN, 1e-9);
  });

  it("leaves more charge behind than with the resistance of its full cell, less than with that of its empty one", () => {
    const left = (curve: Parameters<typeof withCurve>[0]) => {
      const { pack, ...build } = withCurve(curve);
      const cell = { ...pack.cell, minimumVoltage: 3.3 };
      return runDown({ ...build, pack: { ...pack, cell } }).samples.at(-1)?.charge ?? Number.NaN;
    };
    const [full, own, empty] = [level(0.026), RISING, level(0.06)].map(left);
    expect(own).toBeGreaterThan(full);
    expect(own).toBeLessThan(empty);
  });

  it("kept at a suction draws what the throttle's quadratic says at each charge", () => {
    const keep = { pressure: 900 };
    const run = runDown({ ...withCurve(RISING), keep, startCharge: 0.3 });
    const [first] = run.samples;
    // V_b from the pack's own sag, and from what the motor takes at that throttle: the same circuit.
    const { voltage, resistance } = cellAt({ ...CELL, resistanceCurve: RISING }, 0.3);
    const inside = 2 * resistance + 0.014;
    expect(first.packVoltage).toBeCloseToRelative(2 * voltage - inside * first.packCurrent, 1e-12);
    const at035 = runDown({ ...withCurve(level(0.035)), keep, startCharge: 0.3 }).samples[0];
    expect(first.duty).toBeCloseToRelative(at035.duty ?? Number.NaN, 1e-9);
    const stiffer = runDown({ ...withCurve(level(0.026)), keep, startCharge: 0.3 }).samples[0];
    expect(first.duty ?? 0).toBeGreaterThan(stiffer.duty ?? 1);
  });
});
