// Source: open motor and propeller test data by StrawsonDesign, MIT (tests/fixtures/motor-prop-two-voltages/SOURCE.md). Motors and propellers are told by their 7.4 V sweeps alone; the thrusts that
// were measured at 11.1 V are then asked for as a need, of the same size and a motor of the same strength.
import { describe, expect, it } from "vitest";
import { motorBasis } from "#shared/book/motorBasis.ts";
import { sizesOf } from "#shared/decide/size/size.ts";
import { fitPropeller } from "#shared/fit/propellerFit.ts";
import { torqueConstant } from "#shared/physics/motor.ts";
import { question } from "#tests/shared/decide/size/examples.ts";
import {
  bookOf,
  DIAMETER,
  GRAM_FORCE,
  isFull,
  isTurned,
  motors,
  propellers,
  shaftPowerOf,
} from "#tests/support/propellerSweeps.ts";

interface Miss {
  readonly speed: number;
  readonly kv: number;
}

/** What sizing says of the full throttle rows at 11.1 V, over what was measured, and over the motor's own K_v. */
function missesOf(motor: string, propeller: string): Miss[] {
  const { book, sweep } = bookOf(motor, propeller);
  const constants = motorBasis(book, "stand-motor")?.constants;
  if (!constants) return [];
  const low = sweep.filter((row) => row.V_nominal === "7.4");
  const full = low.filter(isFull).map((row) => ({
    rpm: Number(row.rpm),
    thrust: Number(row.thrust_gf) * GRAM_FORCE,
    shaftPower: Math.max(0, shaftPowerOf(row, constants)),
  }));
  if (full.length === 0) return [];
  const { thrust, power, referenceReynolds } = fitPropeller({ diameter: DIAMETER, rows: full });
  if (!power) return [];
  const rotor = {
    kind: "propeller",
    diameter: DIAMETER,
    thrust,
    power,
    referenceReynolds,
    chord: DIAMETER / 10,
  } as const;
  const { kv, resistance, frictionTorque, viscousTorque } = constants;
  const motorConstant = torqueConstant(kv) / Math.sqrt(resistance);
  const frame = { motorConstant, frictionTorque, viscousTorque, thermalResistance: null };
  const supply = { duty: 1, driverResistance: 0, auxCurrent: 0 };
  return sweep
    .filter((row) => row.V_nominal === "11.1" && isFull(row))
    .flatMap((row) => {
      const pack = {
        series: 1,
        parallel: 1,
        openCircuitVoltage: Number(row.V),
        cellResistance: 0,
        wireResistance: 0,
      };
      const need = { pull: Number(row.thrust_gf) * GRAM_FORCE };
      const [sized] = sizesOf(question({ rotor, skirt: null, motor: frame, pack, supply }, need), [
        DIAMETER,
      ]).rows;
      if (sized.kv === null || sized.speed === null) return [];
      const measured = (Number(row.rpm) * Math.PI) / 30;
      return [{ speed: sized.speed / measured - 1, kv: sized.kv / kv - 1 }];
    });
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)];
}

describe("published motors and propellers, sized for the thrust that they made at a voltage never fitted", () => {
  const pairs = motors.flatMap((motor) =>
    propellers
      .filter((propeller) => !isTurned(motor, propeller))
      .map((propeller) => [motor, propeller] as const),
  );
  const misses = pairs.flatMap(([motor, propeller]) => missesOf(motor, propeller));
  const [speeds, windings] = [misses.map(({ speed }) => speed), misses.map(({ kv }) => kv)];
  console.info(
    `sizing, ${misses.length} rows: speed ${(100 * median(speeds)).toFixed(1)} %, at most ${(100 * Math.max(...speeds.map(Math.abs))).toFixed(1)} %; K_v ${(100 * median(windings)).toFixed(1)} %, at most ${(100 * Math.max(...windings.map(Math.abs))).toFixed(1)} %`,
  );

  it("speed and winding: those that were there, the middle row within 3 %", () => {
    expect(misses.length).toBeGreaterThan(15);
    expect(Math.abs(median(speeds))).toBeLessThan(0.03);
    expect(Math.abs(median(windings))).toBeLessThan(0.03);
  });
});
