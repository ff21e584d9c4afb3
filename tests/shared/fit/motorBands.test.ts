import { describe, expect, it } from "vitest";
import { pairInformation, torqueAt, voltageBands } from "#shared/fit/motorBands.ts";
import { fitVoltage, type MotorRow } from "#shared/fit/voltageFit.ts";
import { normals } from "#tests/support/normals.ts";

const RAD_PER_RPM = (2 * Math.PI) / 60;
const K = 1.22e-3;
const R = 0.35;
const SD = 0.02;
const LOADS: readonly [number, number][] = [
  [0.3, 60_000],
  [1.1, 55_000],
  [3, 48_000],
  [6, 40_000],
  [9, 31_000],
  [12, 20_000],
];
const truth = (current: number, rpm: number) => R * current + K * RAD_PER_RPM * rpm;
const rowsWith = (noise: () => number): MotorRow[] =>
  LOADS.map(([current, rpm]) => ({ current, rpm, voltage: truth(current, rpm) + SD * noise() }));

describe("voltageBands, over 2000 motor tests made with known constants and even noise", () => {
  it.each([undefined, R])(
    "with a resistance of %s given: both bands hold 95 % within four binomial sd",
    (given) => {
      const noise = normals(5);
      const at = { current: 4, rpm: 45_000 };
      let [mean, next] = [0, 0];
      for (let i = 0; i < 2000; i++) {
        const bands = voltageBands(fitVoltage(rowsWith(noise), given), at);
        if (!bands) throw new Error("no residual left");
        if (Math.abs(bands.voltage - truth(4, 45_000)) <= bands.mean) mean += 1;
        if (Math.abs(bands.voltage - truth(4, 45_000) - SD * noise()) <= bands.prediction) next += 1;
      }
      expect(Math.abs(mean / 2000 - 0.95)).toBeLessThan(0.02);
      expect(Math.abs(next / 2000 - 0.95)).toBeLessThan(0.02);
    },
  );
});

describe("torqueAt, over 2000 motor tests", () => {
  it("its band holds the true torque in 95 %, within four binomial sd", () => {
    const noise = normals(8);
    const idle = 0.3;
    const torque = (k: number, r: number) => (k * (11.1 - k * RAD_PER_RPM * 40_000)) / r - k * idle;
    let held = 0;
    for (let i = 0; i < 2000; i++) {
      const fit = fitVoltage(rowsWith(noise));
      const friction = { frictionTorque: fit.backEmf * idle, viscousTorque: 0 };
      const { mean } = torqueAt(fit, friction, 11.1, 40_000);
      if (mean.low <= torque(K, R) && torque(K, R) <= mean.high) held += 1;
    }
    expect(Math.abs(held / 2000 - 0.95)).toBeLessThan(0.02);
  });

  it("is zero where friction takes all of the current, and k·V/R less friction at standstill", () => {
    const fit = fitVoltage(rowsWith(normals(2)));
    const free = (11.1 - fit.resistance * 0.3) / fit.backEmf / RAD_PER_RPM;
    const friction = { frictionTorque: fit.backEmf * 0.3, viscousTorque: 0 };
    expect(torqueAt(fit, friction, 11.1, free).torque).toBeCloseTo(0, 12);
    expect(torqueAt(fit, friction, 11.1, 0).torque).toBeCloseToRelative(
      (fit.backEmf * 11.1) / fit.resistance - fit.backEmf * 0.3,
      1e-12,
    );
  });
});

describe("torqueAt, the slope of the torque with k_e", () => {
  it("takes friction along, as it was read in amperes: with R given, the band is t·u(k_e) times the difference quotient", () => {
    const rows = rowsWith(normals(14));
    const fit = fitVoltage(rows, R);
    const idle = 4;
    const at = (k: number) => (k * (11.1 - k * RAD_PER_RPM * 40_000)) / R - k * idle;
    const step = 1e-6 * fit.backEmf;
    const slope = (at(fit.backEmf + step) - at(fit.backEmf - step)) / (2 * step);
    // Student's t, 0.975, ν = 5: 2.571 (NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.2).
    const expected = 2.571 * (fit.standardErrors.backEmf ?? 0) * Math.abs(slope);
    const friction = { frictionTorque: fit.backEmf * idle, viscousTorque: 0 };
    const { mean, torque } = torqueAt(fit, friction, 11.1, 40_000);
    expect(torque).toBeCloseToRelative(at(fit.backEmf), 1e-9);
    expect(mean.high - torque).toBeCloseToRelative(expected, 3e-4);
  });
});

describe("motor bands, rows without a residual", () => {
  it("give none", () => {
    const fit = fitVoltage(rowsWith(() => 0).slice(0, 2));
    expect(voltageBands(fit, { current: 1, rpm: 1e4 })).toBeNull();
    expect(pairInformation(fit)).toBeNull();
    const { torque, mean } = torqueAt(fit, { frictionTorque: 0, viscousTorque: 0 }, 8, 1e4);
    expect([mean.low, mean.high]).toEqual([torque, torque]);
  });
});
