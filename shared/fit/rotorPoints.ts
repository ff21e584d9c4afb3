import { OutOfRangeError, requireFinite, requirePositive } from "../numeric/errors.ts";
import { STANDARD_AIR_DENSITY } from "../physics/constants.ts";
import { coefficientsOf } from "../physics/fanlaws/coefficients.ts";
import { RPM } from "../physics/motor.ts";

/** One row of a curve test. */
export interface RotorReadingPoint {
  readonly rpm: number;
  /** [m³/s] */
  readonly flow: number;
  /** suction of the cavity; below 0 past the open end of the curve [Pa] */
  readonly pressure: number;
  /** unless given: the mean of the rows that state one; 1.2, the standard air of ISO 5801, where none does [kg/m³] */
  readonly density?: number;
  /** [W] */
  readonly shaftPower?: number;
  /** on the squared residual of ψ; 1 unless given [-] */
  readonly weight?: number;
  /** of the rotor in this row, where it isn't that of the fit [m] */
  readonly diameter?: number;
  /** which test the row belongs to [-] */
  readonly test?: number;
}

/** The same row as the fan laws see it. */
export interface RotorPoint {
  readonly phi: number;
  readonly psi: number;
  readonly lambda: number | null;
  readonly weight: number;
  readonly test: number;
}

/**
 * Coefficients of every reading of a family, at whatever speed, size and density it was taken.
 *
 *     φ = Q/((π/4)D²u),  ψ = 2Δp/(ρu²),  λ = 2P/(ρ(π/4)D²u³)
 *
 * @param diameter - of the rotor, unless a reading carries its own [m]
 * @param readings - speed [rpm], flow [m³/s], pressure [Pa], density [kg/m³], shaft power [W], weight [-]
 * @returns φ, ψ, λ (null without shaft power), weight and test of each, in the order given [-]
 * @throws {OutOfRangeError} naming `points.i.…` on a speed, weight or density that is not above 0, a negative flow or shaft power
 *
 * Valid and source: as {@link coefficientsOf}; a pressure below 0 keeps its sign
 */
export function rotorPoints(diameter: number, readings: readonly RotorReadingPoint[]): RotorPoint[] {
  requirePositive("diameter", diameter);
  const density = usualDensity(readings);
  return readings.map((reading, i) => rotorPoint({ diameter, density }, reading, `points.${i}`));
}

/**
 * Density for rows that state none.
 *
 *     the mean of those that do, taken in the same room; 1.2 kg/m³, the standard air of ISO 5801, where none does
 *
 * @param readings - rows, their density where stated [kg/m³]
 * @returns density [kg/m³]
 *
 * Valid for tests of one place and season. Source: common practice, no source
 */
export function usualDensity(readings: readonly Pick<RotorReadingPoint, "density">[]): number {
  let [sum, stated] = [0, 0];
  for (const { density } of readings) {
    if (!(density !== undefined && density > 0)) continue;
    sum += density;
    stated += 1;
  }
  return stated === 0 ? STANDARD_AIR_DENSITY : sum / stated;
}

function rotorPoint(
  usual: { readonly diameter: number; readonly density: number },
  reading: RotorReadingPoint,
  path: string,
): RotorPoint {
  const pressure = requireFinite(`${path}.pressure`, reading.pressure);
  const state = {
    diameter: requirePositive(`${path}.diameter`, reading.diameter ?? usual.diameter),
    speed: RPM * requirePositive(`${path}.rpm`, reading.rpm),
    density: requirePositive(`${path}.density`, reading.density ?? usual.density),
  };
  const shaftPower = reading.shaftPower ?? null;
  for (const [name, value] of [
    ["flow", reading.flow],
    ["shaftPower", shaftPower ?? 0],
  ] as const)
    if (!(value >= 0)) throw new OutOfRangeError(`${path}.${name}`, value, "finite, 0 or greater");
  const { phi, psi, lambda } = coefficientsOf(
    { flow: reading.flow, pressure: Math.abs(pressure), shaftPower },
    state,
  );
  return {
    phi,
    psi: pressure < 0 ? -psi : psi,
    lambda,
    weight: requirePositive(`${path}.weight`, reading.weight ?? 1),
    test: reading.test ?? 0,
  };
}

/** Flows closer than this share of the largest count as one: a bleed plate's steps are far wider. */
const SAME_FLOW = 0.01;

/**
 * How many flows of a curve are really different.
 *
 *     number of φ that stand more than 1 % of the largest apart
 *
 * @param phis - flow coefficients [-]
 * @returns the number [-]; 1 where all lie at one flow
 *
 * Valid for any order. Source: judgement; a curve of degree d needs d + 1 different flows
 */
export function distinctFlows(phis: readonly number[]): number {
  const sorted = [...phis].sort((a, b) => a - b);
  const step = SAME_FLOW * (sorted.at(-1) ?? 0);
  let count = 0;
  let last = Number.NEGATIVE_INFINITY;
  for (const phi of sorted) {
    if (count > 0 && !(phi - last > step)) continue;
    count += 1;
    last = phi;
  }
  return count;
}
