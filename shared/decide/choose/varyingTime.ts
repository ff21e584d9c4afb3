import type { CellsByStep } from "./packTable.ts";

/** 1/I_pack by how far the cell has fallen: a parabola through three operating points [1/A, 1/(A·V), 1/(A·V²)]. */
export interface InverseCurrent {
  readonly first: number;
  readonly slope: number;
  readonly square: number;
}

/** What a run of cells whose resistance varies is made of. */
export interface VaryingRun {
  readonly steps: CellsByStep;
  readonly inverse: InverseCurrent;
  /** N_p·C_cell [C] */
  readonly capacity: number;
  /** V_oc of one cell where the run begins [V] */
  readonly voltage: number;
  /** R_cell/N_p there [Ω] */
  readonly cellResistance: number;
  readonly minimumVoltage: number;
}

/** Repetitions from the step before: each leaves some hundredths of the error. */
const ROUNDS = 5;

/**
 * How long a pack lasts whose cells' resistance varies with their charge.
 *
 *     t = N_p·C·∫dz/I_pack(V′),  V′ = V_oc(z) − (R(z) − R₀)·I/N_p as {@link standInVoltage};  to V′ − R₀·I/N_p = V_min or z = 0
 *
 * @param run - cells by step [V, Ω], 1/I_pack [1/A], capacity [C]
 * @returns t [s]
 *
 * Valid within 0.1 % of {@link runDown}, the winding settled. Source: trapezoid rule; docs/method/choosing.md
 */
export function varyingTime(run: VaryingRun): number {
  const { steps, inverse, capacity, voltage, cellResistance, minimumVoltage } = run;
  const { first, slope, square } = inverse;
  const at = (fall: number) => first + fall * (slope + fall * square);
  let [fall, sum] = [0, 0];
  let before = at(0);
  let spare = voltage - cellResistance / before - minimumVoltage;
  for (let i = 1; i < steps.voltage.length; i++) {
    for (let round = 0; round < ROUNDS; round++) fall = steps.voltage[i] - voltage - steps.more[i] / at(fall);
    const now = at(fall);
    const left = voltage + fall - cellResistance / now - minimumVoltage;
    if (left <= 0) {
      const share = spare / (spare - left);
      return capacity * (sum + steps.width * share * (before + (share * (now - before)) / 2));
    }
    sum += (steps.width * (before + now)) / 2;
    before = now;
    spare = left;
  }
  return capacity * sum;
}
