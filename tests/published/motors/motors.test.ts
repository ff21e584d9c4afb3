import { describe, expect, it } from "vitest";
import { shaftTorque, speedConstant } from "#shared/physics/motor.ts";
import { motorCurrent } from "#shared/physics/pack.ts";

const radPerSecond = (rpm: number) => (rpm * Math.PI) / 30;

/** A mains or bench supply without a sag. */
const supply = (voltage: number) => ({
  duty: 1,
  openCircuitVoltage: voltage,
  packResistance: 0,
  driverResistance: 0,
  auxCurrent: 0,
});

describe("a permanent-magnet motor known from its no-load test", () => {
  // Fitzgerald, Kingsley & Umans, Electric Machinery, Example 7.9 (p. 389): 1.03 Ω; 50 V, 2100 rpm, 1.25 A; then 48 V, 1700 rpm. Found in a public textbook companion.
  // The rotational loss is held at its no-load value, and the book rounds k = 0.2215096 to 0.22 before the last part, but not the loss of 60.89 W (275.05 W against 267.06 W): both are tested, not mixed.
  const resistance = 1.03;
  const exact = (50 - 1.25 * resistance) / radPerSecond(2100);
  const loss = exact * 1.25 * radPerSecond(2100);

  function shaftPower(k: number, rotationalLoss: number): { current: number; power: number } {
    const speed = radPerSecond(1700);
    const current = motorCurrent(supply(48), resistance, k, speed);
    const motor = { kv: speedConstant(k), frictionTorque: rotationalLoss / speed, viscousTorque: 0 };
    return { current, power: shaftTorque(motor, current, speed) * speed };
  }

  // k printed to two digits: 1 %. 61 W printed to two digits: 0.3 % (the exact one is 60.89 W).
  it("at no load has the book's k of 0.22 and 61 W of loss", () => {
    expect(exact).toBeCloseToRelative(0.22, 0.01);
    expect(loss).toBeCloseToRelative(61, 0.003);
    const current = motorCurrent(supply(50), resistance, exact, radPerSecond(2100));
    const motor = { kv: speedConstant(exact), frictionTorque: exact * 1.25, viscousTorque: 0 };
    expect(current).toBeCloseToRelative(1.25, 1e-12);
    expect(Math.abs(shaftTorque(motor, current, radPerSecond(2100)))).toBeLessThan(1e-12);
  });

  it("at 48 V and 1700 rpm with the book's rounded k gives its 275.05 W", () => {
    expect(shaftPower(0.22, loss).power).toBeCloseToRelative(275.05, 1e-4);
  });

  // Recomputed without rounding. Derived.
  it("at 48 V and 1700 rpm with k unrounded gives 8.3165742 A and 267.064568 W, 66.900686 %", () => {
    const { current, power } = shaftPower(exact, loss);
    expect(exact * radPerSecond(1700)).toBeCloseToRelative(39.43392857, 1e-7);
    expect(current).toBeCloseToRelative(8.3165742, 1e-7);
    expect(power).toBeCloseToRelative(267.064568, 1e-7);
    expect(power / (48 * current)).toBeCloseToRelative(0.66900686, 1e-7);
  });
});

describe("a motor without friction under load", () => {
  // GATE EE 2010: 200 V, 1500 rpm unloaded, 1400 rpm at 5 N·m; 3.4 Ω among the options (found), 193.3 V for 2.5 N·m at 1400 rpm from memory. Printed digits: 0.2 %.
  const k = 200 / radPerSecond(1500);

  it("at 5 N·m and 1400 rpm has the option's 3.4 Ω", () => {
    const current = motorCurrent(supply(200), 3.4, k, radPerSecond(1400));
    const motor = { kv: speedConstant(k), frictionTorque: 0, viscousTorque: 0 };
    expect(shaftTorque(motor, current, radPerSecond(1400))).toBeCloseToRelative(5, 0.002);
  });

  it("at 2.5 N·m and 1400 rpm needs 193.3 V", () => {
    const current = motorCurrent(supply(193.3), 3.3953, k, radPerSecond(1400));
    // 193.3 V stands for 193.33 V: 0.03 V of the 6.67 V across the winding, 0.5 %.
    expect(k * current).toBeCloseToRelative(2.5, 0.006);
  });

  // S. P. Burman, Special Electrical Machines, Example 4.5 (p. 218): 120 V, 6000 rpm unloaded; 60 V, 2.5 Ω, 0.5 N·m → 2672.75 rpm. Found as printed by a public textbook companion.
  it("at half its voltage and 0.5 N·m turns at the companion's 2672.75 rpm", () => {
    const constant = 120 / radPerSecond(6000);
    const current = motorCurrent(supply(60), 2.5, constant, radPerSecond(2672.75));
    // Five digits of a speed that takes 53 of the 60 V: 1e-5·53/6.5.
    expect(constant * current).toBeCloseToRelative(0.5, 1e-4);
  });

  // Problem on a public homework page: 1 Ω, 12 V, 2 A unloaded; slowed by 10 % it draws 3 A. Found. Exact.
  it("slowed by a tenth from 2 A draws 3 A", () => {
    const speed = 100;
    const constant = (12 - 2 * 1) / speed;
    expect(motorCurrent(supply(12), 1, constant, 0.9 * speed)).toBeCloseTo(3, 12);
  });
});

describe("best efficiency of a motor with a constant no-load current", () => {
  // η = (1 − I/I_s)(1 − I₀/I), largest at I = √(I₀·I_s): formula in public course notes, numbers derived.
  it("at 7.4 V, 1.2 Ω and 0.3 A is 60.751988 % at 1.36014705 A, and less on both sides", () => {
    const [voltage, resistance, k] = [7.4, 1.2, 0.005];
    const motor = { kv: speedConstant(k), frictionTorque: k * 0.3, viscousTorque: 0 };
    const efficiency = (current: number) => {
      const speed = (voltage - resistance * current) / k;
      return (shaftTorque(motor, current, speed) * speed) / (voltage * current);
    };
    expect(efficiency(1.36014705)).toBeCloseToRelative(0.60751988, 1e-8);
    for (const factor of [0.99, 1.01])
      expect(efficiency(factor * 1.36014705)).toBeLessThan(efficiency(1.36014705));
  });
});
