import { OutOfRangeError, requireNonNegative, requirePositive } from "../numeric/errors.ts";
import { createPchip } from "../numeric/pchip.ts";

export interface Pack {
  /** cells in series, N_s [-] */
  readonly series: number;
  /** strings in parallel, N_p [-] */
  readonly parallel: number;
  /** of one cell [Ω] */
  readonly cellResistance: number;
  /** of leads and plugs, once for the pack [Ω] */
  readonly wireResistance: number;
}

/** The circuit from pack to winding, all of it but the speed. */
export interface Supply {
  /** δ, 0…1 [-] */
  readonly duty: number;
  /** V_oc of the pack [V] */
  readonly openCircuitVoltage: number;
  /** R_b of the pack [Ω] */
  readonly packResistance: number;
  /** R_d [Ω] */
  readonly driverResistance: number;
  /** I_aux: other loads on the pack, drive motors included [A] */
  readonly auxCurrent: number;
}

/**
 * Resistance of a pack.
 *
 *     R_b = N_s·R_cell/N_p + R_wire
 *
 * @param pack - cells in series and parallel [-], cell and wire resistance [Ω]
 * @returns R_b [Ω]
 * @throws {OutOfRangeError} on counts that are no whole numbers from 1 up, a negative or non-finite resistance
 *
 * Valid for equal cells. Source: Kirchhoff's laws
 */
export function packResistance(pack: Pack): number {
  requireCount("pack.series", pack.series);
  requireCount("pack.parallel", pack.parallel);
  requireNonNegative("pack.cellResistance", pack.cellResistance);
  requireNonNegative("pack.wireResistance", pack.wireResistance);
  return (pack.series * pack.cellResistance) / pack.parallel + pack.wireResistance;
}

function requireCount(quantity: string, value: number): void {
  if (!(Number.isInteger(value) && value >= 1))
    throw new OutOfRangeError(quantity, value, "a whole number, 1 or more");
}

/**
 * Open-circuit voltage of a cell by its state of charge.
 *
 *     V_oc(z): monotone cubic (PCHIP) through the points of the curve
 *
 * @param curve - points [charge 0…1, voltage], by rising charge, two or more [-, V]
 * @param charge - z, 0…1 and within the curve [-]
 * @returns V_oc of the cell [V]
 * @throws {OutOfRangeError} on a charge outside the curve, points that do not rise in charge
 * @throws {NotEnoughDataError} on fewer than two points
 *
 * Valid between the first and the last point. To ask one curve many times, keep {@link openCircuitCurve}.
 * Source: Fritsch & Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300–304
 */
export function openCircuitVoltage(curve: readonly (readonly [number, number])[], charge: number): number {
  return openCircuitCurve(curve)(charge);
}

/**
 * A cell's open-circuit curve, made ready to be asked many times.
 *
 *     V_oc(z), as {@link openCircuitVoltage}
 *
 * @param curve - points [charge 0…1, voltage], by rising charge, two or more [-, V]
 * @returns function from charge [-] to V_oc of the cell [V]
 * @throws {OutOfRangeError} on points that do not rise in charge or lie beyond 0…1; later, on a charge outside the curve
 * @throws {NotEnoughDataError} on fewer than two points
 *
 * Valid and source: as {@link openCircuitVoltage}
 */
export function openCircuitCurve(curve: readonly (readonly [number, number])[]): (charge: number) => number {
  const found = ready.get(curve);
  if (found) return found;
  const made = asked(curve);
  ready.set(curve, made);
  return made;
}

/** A pack's curve is asked for with every prediction; it is made ready once. */
const ready = new WeakMap<readonly (readonly [number, number])[], (charge: number) => number>();

function asked(curve: readonly (readonly [number, number])[]): (charge: number) => number {
  for (const [charge, voltage] of curve) {
    if (!(charge >= 0 && charge <= 1)) throw new OutOfRangeError("cell.curve.charge", charge, "0 to 1");
    requirePositive("cell.curve.voltage", voltage);
  }
  const pchip = createPchip(
    curve.map(([charge]) => charge),
    curve.map(([, voltage]) => voltage),
  );
  const [least, most] = pchip.clampedTo;
  return (charge) => {
    if (!(charge >= least && charge <= most))
      throw new OutOfRangeError("charge", charge, `${least} to ${most}, the ends of the curve`);
    return pchip.value(charge);
  };
}

/**
 * Current through the winding at a given speed.
 *
 *     I = (δ·V_oc − δ·R_b·I_aux − k_e·ω)/(R_m + R_d + δ²·R_b)
 *
 * @param supply - duty [-], V_oc [V], R_b and R_d [Ω], I_aux [A]
 * @param windingResistance - R_m at its temperature [Ω]
 * @param torqueConstant - k_e [V·s/rad]
 * @param speed - ω [rad/s]
 * @returns I [A]; below 0 where the rotor drives the motor
 * @throws {OutOfRangeError} on a duty beyond 0…1, or a circuit without resistance
 *
 * Valid for a driver that averages: current on the pack's side is δ·I. Source: Kirchhoff's laws; docs/method/motor.md
 */
export function motorCurrent(
  supply: Supply,
  windingResistance: number,
  torqueConstant: number,
  speed: number,
): number {
  const { duty, openCircuitVoltage, packResistance, driverResistance, auxCurrent } = supply;
  if (!(duty >= 0 && duty <= 1)) throw new OutOfRangeError("supply.duty", duty, "0 to 1");
  const resistance = windingResistance + driverResistance + duty * duty * packResistance;
  requirePositive("resistance of the circuit", resistance);
  return (duty * (openCircuitVoltage - packResistance * auxCurrent) - torqueConstant * speed) / resistance;
}

/**
 * Current out of the pack.
 *
 *     I_b = δ·I + I_aux
 *
 * @param supply - duty [-], I_aux [A]
 * @param current - I of the winding [A]
 * @returns I_b [A]
 *
 * Valid for a driver without losses of its own but R_d. Source: conservation of energy
 */
export function packCurrent(supply: Pick<Supply, "duty" | "auxCurrent">, current: number): number {
  return supply.duty * current + supply.auxCurrent;
}

/**
 * Duty at which a motor was read.
 *
 *     δ·(δ·V − k_e·ω)/R_m = I_b, solved for δ ≥ 0
 *
 * @param reading - V before the speed controller [V], I_b in the pack's lead [A], ω [rad/s]
 * @param windingResistance - R_m, that of the controller included [Ω]
 * @param torqueConstant - k_e [V·s/rad]
 * @returns δ [-]; above 1 where the reading doesn't fit the constants
 * @throws {OutOfRangeError} on a voltage or a resistance that is not above 0, a negative current or speed
 *
 * Valid for a controller that averages. Source: {@link motorCurrent} and {@link packCurrent} with nothing else on the pack
 */
export function dutyFromReading(
  reading: { readonly voltage: number; readonly current: number; readonly speed: number },
  windingResistance: number,
  torqueConstant: number,
): number {
  const voltage = requirePositive("voltage", reading.voltage);
  const backEmf = torqueConstant * requireNonNegative("speed", reading.speed);
  const drop =
    requirePositive("motor.resistance", windingResistance) * requireNonNegative("current", reading.current);
  return (backEmf + Math.sqrt(backEmf ** 2 + 4 * voltage * drop)) / (2 * voltage);
}

/**
 * Voltage at the pack's terminals under load.
 *
 *     V_b = V_oc − R_b·I_b
 *
 * @param supply - V_oc [V], R_b [Ω], duty [-], I_aux [A]
 * @param current - I of the winding [A]
 * @returns V_b [V]
 *
 * Valid for a resistive sag; slower effects of the cell are left out. Source: Kirchhoff's laws
 */
export function packVoltage(supply: Supply, current: number): number {
  return supply.openCircuitVoltage - supply.packResistance * packCurrent(supply, current);
}
