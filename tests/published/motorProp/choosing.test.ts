// Source: open motor and propeller test data by StrawsonDesign, MIT (tests/fixtures/motor-prop-two-voltages/SOURCE.md). Motors and propellers are told by their 7.4 V sweeps alone,
// and searched at the voltages that the 11.1 V sweeps were read at. The hand calculation takes one pair's coefficients with the digits that are typed here.
import { describe, expect, it } from "vitest";
import { motorBasis } from "#shared/book/motorBasis.ts";
import { timeAlone } from "#shared/decide/choose/alone.ts";
import { prepare } from "#shared/decide/choose/prepare.ts";
import type { Problem } from "#shared/decide/choose/problem.ts";
import { solveChunk } from "#shared/decide/choose/solveChunk.ts";
import { fitPropeller } from "#shared/fit/propellerFit.ts";
import { motor, pack, propeller, question, stand } from "#tests/shared/decide/choose/questions.ts";
import { quantileOf } from "#tests/support/csvFixture.ts";
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

const DRY = { temperature: 293.15, pressure: 101_325, humidity: 0.5 };
const LEVEL: Problem["wants"] = { attitudes: [{ angle: 180, mode: "parked" }], targetMargin: 1 };

/** A question of motors with propellers of five inches, on flat cells at given voltages, nothing else in the circuit. */
function searched(
  change: Pick<Problem, "motors" | "packs"> & { readonly propellers: Problem["propellers"] },
): Problem {
  const base = question();
  const supply = { driverResistance: 0, auxCurrent: 0 };
  return {
    ...base,
    ...change,
    fixed: { ...base.fixed, air: DRY, supply },
    rotors: [],
    skirts: [],
    stands: [stand(null)],
    duties: [1],
    wants: LEVEL,
  };
}

const flatPack = (volts: number, capacity = 3600) =>
  pack(`${volts}`, 1, {
    wireResistance: 0,
    cell: {
      capacity,
      minimumVoltage: 0.5 * volts,
      resistance: 0,
      curve: [
        [0, volts],
        [1, volts],
      ],
    },
  });

interface Miss {
  readonly speed: number;
  readonly thrust: number;
}

function missesOf(motorCode: string, propellerCode: string): Miss[] {
  const { book, sweep } = bookOf(motorCode, propellerCode);
  const constants = motorBasis(book, "stand-motor")?.constants;
  if (!constants) return [];
  const low = sweep.filter((row) => row.V_nominal === "7.4" && isFull(row));
  const asked = sweep.filter((row) => row.V_nominal === "11.1" && isFull(row));
  if (low.length === 0 || asked.length === 0) return [];
  const rows = low.map((row) => ({
    rpm: Number(row.rpm),
    thrust: Number(row.thrust_gf) * GRAM_FORCE,
    shaftPower: Math.max(0, shaftPowerOf(row, constants)),
  }));
  const { thrust, power, referenceReynolds } = fitPropeller({ diameter: DIAMETER, rows });
  if (!power || !(power[0] > 0)) return [];
  const sizes = [{ diameter: DIAMETER, mass: 0.004 }];
  const family = propeller(propellerCode, { thrust, power, referenceReynolds, chordRatio: 0.1, sizes });
  const prepared = prepare(
    searched({
      motors: [motor(motorCode, { ...constants, thermalResistance: null })],
      propellers: [family],
      packs: asked.map((row) => flatPack(Number(row.V))),
    }),
  );
  const { speed, suction } = solveChunk(prepared, 0, prepared.count);
  return asked.map((row, i) => ({
    speed: (speed[i] * 30) / Math.PI / Number(row.rpm) - 1,
    thrust: suction[i] / (Number(row.thrust_gf) * GRAM_FORCE) - 1,
  }));
}

describe("published motors and propellers told at 7.4 V, searched at 11.1 V", () => {
  const misses = motors.flatMap((each) =>
    propellers.filter((one) => !isTurned(each, one)).flatMap((one) => missesOf(each, one)),
  );
  const middle = (of: keyof Miss) =>
    quantileOf(
      misses.map((miss) => miss[of]),
      0.5,
    );
  console.info(
    `searched, ${misses.length} rows: speed ${(100 * middle("speed")).toFixed(1)} %, thrust ${(100 * middle("thrust")).toFixed(1)} %`,
  );

  it("their sets have the speeds that were measured, the middle row within 3 %, and thrust with its square within 6 %", () => {
    expect(misses.length).toBeGreaterThan(15);
    expect(Math.abs(middle("speed"))).toBeLessThan(0.03);
    expect(Math.abs(middle("thrust"))).toBeLessThan(0.06);
  });
});

describe("one set by hand: a motor of 2000 rpm/V and 0.1 Ω with a five-inch propeller of C_T 0.15, C_P 0.08 at 7.4 V", () => {
  // The coefficients, the motor and the pack are invented. k = 60/(2π·2000) = 4.774648e-3 V·s, no friction. q = C_P·ρ·D⁵/(2π)³ with ρ of the search's own air, so that the arithmetic alone is judged.
  // Torques: k(V − kω)/R = qω², a quadratic in ω. Then T = C_T·ρ·(ω/2π)²·D⁴, I = (V − kω)/R, minutes = 1 Ah over I.
  const prepared = prepare(
    searched({
      motors: [
        motor("hand", {
          kv: 2000,
          resistance: 0.1,
          frictionTorque: 0,
          viscousTorque: 0,
          thermalResistance: null,
        }),
      ],
      propellers: [
        propeller("hand", { thrust: [0.15, 0], power: [0.08, 0], sizes: [{ diameter: 0.127, mass: 0.004 }] }),
      ],
      packs: [flatPack(7.4)],
    }),
  );
  const chunk = solveChunk(prepared, 0, 1);
  const rho = prepared.air.density;
  const k = 60 / (2 * Math.PI * 2000);
  const q = (0.08 * rho * 0.127 ** 5) / (2 * Math.PI) ** 3;
  const damping = (k * k) / 0.1;
  const omega = (-damping + Math.sqrt(damping ** 2 + (4 * q * k * 7.4) / 0.1)) / (2 * q);
  const amps = (7.4 - k * omega) / 0.1;

  it("its air is that of 20 °C, 1013.25 hPa and 50 %: 1.199 kg/m³", () => {
    expect(rho).toBeCloseTo(1.199, 3);
  });

  it("speed, thrust and current are those of the quadratic", () => {
    expect(chunk.speed[0]).toBeCloseToRelative(omega, 1e-12);
    expect(chunk.suction[0]).toBeCloseToRelative(
      0.15 * rho * (omega / (2 * Math.PI)) ** 2 * 0.127 ** 4,
      1e-12,
    );
    expect(chunk.packCurrent[0]).toBeCloseToRelative(amps, 1e-9);
    expect(chunk.flags[0] & 8).toBe(0);
  });

  // q = 0.08 · 1.199 · 3.3038e-5/248.05 = 1.2776e-8; k²/R = 2.2797e-4; kV/R = 0.35332: ω = (−2.2797e-4 + √(5.197e-8 + 1.8056e-8))/(2.5552e-8) = 1434.5 rad/s;
  // I = (7.4 − 6.8494)/0.1 = 5.51 A, and k·I = 0.02629 = qω²; T = 0.15 · 1.199 · 228.3² · 2.6014e-4 = 2.44 N; 3600 C/5.506 A = 654 s.
  it("worked on paper: 1434.5 rad/s, 2.44 N, 5.51 A, 654 s", () => {
    expect(chunk.speed[0]).toBeCloseTo(1434.5, 0);
    expect(chunk.suction[0]).toBeCloseTo(2.44, 2);
    expect(chunk.packCurrent[0]).toBeCloseTo(5.51, 2);
    expect(Math.abs(timeAlone(prepared, 0) - 654)).toBeLessThan(1);
  });
});
