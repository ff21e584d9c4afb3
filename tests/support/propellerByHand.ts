// Source: open motor and propeller test data by StrawsonDesign, MIT (tests/fixtures/motor-prop-two-voltages/SOURCE.md).
import type { Problem } from "#shared/decide/choose/problem.ts";
import { motor, pack, propeller, question, stand } from "#tests/shared/decide/choose/questions.ts";
import { DIAMETER, GRAM_FORCE, isFull, rows, type SweepRow } from "./propellerSweeps.ts";

/** The source says nothing of its air: 20 °C, 1013.25 hPa, half wet. */
export const AIR = { temperature: 293.15, pressure: 101_325, humidity: 0.5 };
export const SUPPLY = { driverResistance: 0, auxCurrent: 0 };
/** [C] */
export const CAPACITY = 3600;

/** A row's own figures, SI. */
export const read = (row: SweepRow) => ({
  volts: Number(row.V),
  amps: Number(row.I_A),
  omega: (Number(row.rpm) * Math.PI) / 30,
  thrust: Number(row.thrust_gf) * GRAM_FORCE,
});
export const fullRow = (motorCode: string, propellerCode: string, volts: string): SweepRow | undefined =>
  rows.find(
    (row) =>
      row.motor_code === motorCode &&
      row.prop_code === propellerCode &&
      row.V_nominal === volts &&
      isFull(row),
  );

/** k and R of V = R·I + k·ω from two rows; the motor's friction, which no row has alone, counts with the propeller's torque. */
export function constantsOf(one: ReturnType<typeof read>, other: ReturnType<typeof read>) {
  const determinant = one.amps * other.omega - other.amps * one.omega;
  const resistance = (one.volts * other.omega - other.volts * one.omega) / determinant;
  return { resistance, k: (one.volts - resistance * one.amps) / one.omega };
}

/** C_T = T/(ρn²D⁴), C_P = kIω/(ρn³D⁵) of a row. */
export function coefficientsOf({ amps, omega, thrust }: ReturnType<typeof read>, k: number, rho: number) {
  const n = omega / (2 * Math.PI);
  return {
    ct: thrust / (rho * n ** 2 * DIAMETER ** 4),
    cp: (k * amps * omega) / (rho * n ** 3 * DIAMETER ** 5),
  };
}

export const flatCell = (volts: number) => ({
  capacity: CAPACITY,
  minimumVoltage: 0.5 * volts,
  resistance: 0,
  curve: [
    [0, volts],
    [1, volts],
  ] as [number, number][],
});
export const machine = (id: string, k: number, resistance: number) =>
  motor(id, {
    kv: 60 / (2 * Math.PI * k),
    resistance,
    frictionTorque: 0,
    viscousTorque: 0,
    thermalResistance: null,
  });
export const blades = (id: string, ct: number, cp: number) =>
  propeller(id, {
    thrust: [ct, 0],
    power: [cp, 0],
    testedReynolds: undefined,
    sizes: [{ diameter: DIAMETER, mass: 0.004 }],
  });

/** A question of motors, propellers and packs, nothing else in the circuit. */
export function searched(lists: Pick<Problem, "motors" | "packs" | "propellers">): Problem {
  const base = question();
  return {
    ...base,
    ...lists,
    fixed: { ...base.fixed, air: AIR, supply: SUPPLY },
    rotors: [],
    skirts: [],
    stands: [stand(null)],
    duties: [1],
    wants: { attitudes: [{ angle: "worst", mode: "driving" }], targetMargin: 1 },
  };
}
export const flatPack = (volts: number) => pack(`${volts}`, 1, { wireResistance: 0, cell: flatCell(volts) });
