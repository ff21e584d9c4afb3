import { describe, expect, it } from "vitest";
import { timeToTemperature } from "#shared/physics/limits/heating.ts";
import { limitCurrent, steadyWindingTemperature } from "#shared/physics/winding.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";

const heated = { current: 6, resistance20: 0.19, thermalResistance: 7, timeConstant: 45, ambient: 291.15 };
const runaway = limitCurrent(heated.resistance20, heated.thermalResistance);

/** The differential equation itself, by many small midpoint steps: τ·dT/dt = R_th·I²·R₂₀·[1 + 0.00393(T − 293.15)] − (T − T_a). */
function stepped(current: number, time: number): number {
  const steps = 20_000;
  const h = time / steps;
  const rate = (t: number) => (7 * current ** 2 * 0.19 * (1 + 0.00393 * (t - 293.15)) - (t - 291.15)) / 45;
  let temperature = 291.15;
  for (let i = 0; i < steps; i++) temperature += h * rate(temperature + (h / 2) * rate(temperature));
  return temperature;
}

describe("time to a temperature", () => {
  // Derived: the heat balance, integrated in small steps; error of the order of h².
  it.each([
    [6, 10],
    [6, 60],
    [12, 30],
    [20, 20],
  ])("at %s A to what the differential equation, stepped, has after %s s is that time", (current, time) => {
    expect(timeToTemperature({ ...heated, current }, stepped(current, time))).toBeCloseToRelative(time, 1e-5);
  });

  it("just below and just above the limit current is one and the same, near a straight line", () => {
    // q·α = 1: rise = q[1 + α(T_a − 20 °C)]·t/τ with q = 1/α; after one τ it is q less 2 K.
    for (const part of [1 - 1e-9, 1, 1 + 1e-9]) {
      const at = { ...heated, current: part * runaway };
      expect(timeToTemperature(at, 291.15 + 1 / 0.00393 - 2)).toBeCloseToRelative(45, 1e-7);
    }
  });

  it("is infinite at or above the settled temperature, and none at the air's", () => {
    const settled = steadyWindingTemperature(6, 0.19, 7, 291.15);
    expect(timeToTemperature(heated, settled + 0.01)).toBe(Number.POSITIVE_INFINITY);
    expect(timeToTemperature(heated, settled - 0.01)).toBeLessThan(Number.POSITIVE_INFINITY);
    expect(timeToTemperature(heated, 291.15)).toBe(0);
    expect(timeToTemperature({ ...heated, current: 0 }, 300)).toBe(Number.POSITIVE_INFINITY);
  });

  it("beyond the limit current always comes, the sooner the larger the current", () => {
    const times = [1.01, 2, 4].map((part) =>
      timeToTemperature({ ...heated, current: part * runaway }, 393.15),
    );
    expect(times[0]).toBeGreaterThan(times[1]);
    expect(times[1]).toBeGreaterThan(times[2]);
    // Far beyond, no heat leaves in time: t = τ·ΔT/(q·[1 + …]) and a little less, as the resistance grows.
    expect(times[2]).toBeLessThan((45 * 102) / (16 * (1 / 0.00393 - 2)));
  });

  it("refuses a winding that can't be", () => {
    expectOutOfRange(
      () => timeToTemperature({ ...heated, timeConstant: 0 }, 300),
      "motor.thermalTimeConstant",
    );
    expectOutOfRange(() => timeToTemperature({ ...heated, resistance20: 0 }, 300), "motor.resistance");
    expectOutOfRange(() => timeToTemperature({ ...heated, current: Number.NaN }, 300), "current");
  });

  it("refuses a temperature below the air's", () => {
    expectOutOfRange(() => timeToTemperature(heated, 290), "temperature");
    expectOutOfRange(() => timeToTemperature(heated, Number.NaN), "temperature");
  });
});
