import { describe, expect, it } from "vitest";
import { stateOf } from "#shared/decide/limits/state.ts";
import { warmUp } from "#shared/decide/limits/warmUp.ts";
import { timeToTemperature } from "#shared/physics/limits/heating.ts";
import { runDown } from "#shared/physics/rundown.ts";
import { BUILD, withSeries } from "./examples.ts";

const LIMIT = 393.15;

/** A motor that can't turn, behind a resistance so large that its own does not count: its current is constant. */
function stalled(current: number) {
  const driverResistance = 1e7;
  const cell = {
    ...BUILD.pack.cell,
    minimumVoltage: 1,
    resistance: 0,
    curve: [
      [0, current * driverResistance * 0.9],
      [1, current * driverResistance],
    ] as const,
  };
  return {
    ...BUILD,
    motor: { ...BUILD.motor, frictionTorque: 10 },
    supply: { duty: 1, driverResistance, auxCurrent: 0 },
    pack: { series: 1, parallel: 1, wireResistance: 0, cell },
  };
}

describe("the winding from cold", () => {
  // Derived: the closed form at constant current, shared/physics/limits/heating.ts, itself held against the differential equation.
  it.each([10, 15, 25, 40])("at a constant %s A takes the closed form's time to its limit", (current) => {
    const build = stalled(current);
    const { timeToLimit } = warmUp(build, stateOf(build), LIMIT) ?? {};
    const heated = {
      current,
      resistance20: 0.19,
      thermalResistance: 7,
      timeConstant: 45,
      ambient: build.air.temperature,
    };
    expect(timeToLimit).toBeCloseToRelative(timeToTemperature(heated, LIMIT), 1e-6);
  });

  it("with a current below the one that settles at the limit never reaches it", () => {
    const build = stalled(6);
    expect(warmUp(build, stateOf(build), LIMIT)?.timeToLimit).toBeNull();
  });

  it("runs into the settled point of the operating point", () => {
    const state = stateOf(BUILD);
    const samples = warmUp(BUILD, state, LIMIT)?.samples ?? [];
    const [first, last] = [samples[0], samples[samples.length - 1]];
    expect(first.temperature).toBe(BUILD.air.temperature);
    const rise = state.windingTemperature - first.temperature;
    expect(last.temperature - first.temperature).toBeGreaterThan(0.98 * rise);
    expect(last.temperature).toBeLessThan(state.windingTemperature);
  });

  it("is the run-down's at every sample, with a cell whose voltage does not fall", () => {
    const flat = {
      ...BUILD.pack.cell,
      capacity: 1000,
      curve: [
        [0, 4.2],
        [1, 4.2],
      ] as const,
    };
    const build = { ...BUILD, pack: { ...BUILD.pack, cell: flat } };
    const samples = warmUp(build, stateOf(build), null)?.samples ?? [];
    const run = runDown({ ...build, step: 45 / 40 / 2 }).samples;
    const both = run.flatMap(({ time, windingTemperature }) => {
      const same = samples.find((sample) => Math.abs(sample.time - time) < 1e-6);
      return same ? [{ of: same.temperature, run: windingTemperature }] : [];
    });
    expect(both.length).toBeGreaterThan(10);
    for (const { of, run: temperature } of both) expect(of).toBeCloseToRelative(temperature, 1e-7);
  });

  it("goes faster on more cells, and its samples pass the limit by a quarter of the way", () => {
    const times = [3, 4, 6].map((series) => {
      const { build } = withSeries(series);
      return warmUp(build, stateOf(build), LIMIT);
    });
    const [three, four, six] = times.map((warm) => warm?.timeToLimit ?? Number.NaN);
    expect(three).toBeGreaterThan(four);
    expect(four).toBeGreaterThan(six);
    const last = times[2]?.samples.at(-1);
    expect(last?.time).toBeGreaterThanOrEqual(1.25 * six);
    expect(last?.temperature).toBeGreaterThan(LIMIT);
  });

  it("is not known without a thermal resistance or a time constant, and is over at once in air as hot as the limit", () => {
    const cold = { ...BUILD, motor: { ...BUILD.motor, thermalResistance: null, thermalTimeConstant: null } };
    expect(warmUp(cold, stateOf(cold), LIMIT)).toBeNull();
    const settled = { ...BUILD, motor: { ...BUILD.motor, thermalTimeConstant: null } };
    expect(warmUp(settled, stateOf(settled), LIMIT)).toBeNull();
    expect(warmUp(BUILD, stateOf(BUILD), BUILD.air.temperature)?.timeToLimit).toBe(0);
  });
});
