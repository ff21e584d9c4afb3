import { evaluatePolynomial } from "../../numeric/polynomial.ts";
import { COPPER_TEMPERATURE_COEFFICIENT, WINDING_REFERENCE_TEMPERATURE } from "../constants.ts";
import { type Leak, leakFlow } from "../restriction/leak.ts";
import { type Machine, overcomesFriction, psiAt } from "./machine.ts";

/** Where a crossing was found, and the slope with which the next one is looked for. */
export interface Followed {
  phi: number;
  /** Q [m³/s] */
  flow: number;
  /** Δp [Pa] */
  pressure: number;
  /** R_m, warm [Ω] */
  winding: number;
  /** change of leak less rotor flow with φ [m³/s] */
  slope: number;
}

const MOST_STEPS = 40;
/** A step this small, relative to its number, is followed by none: a secant squares it nearly, far below rounding. */
const SETTLED = 1e-9;
/** Half-width, relative to φ, in which a crossing counts as the next one. */
const NEAR = 0.25;
/** First step in search of a slope, relative to the number [-]. */
const FIRST_STEP = 1e-3;

/** ω at one winding resistance by the balance of torques [rad/s]; NaN where the motor stands or none is steady. */
function speedAt(machine: Machine, load: number, winding: number): number {
  const { torqueConstant: k, motor, drivingVoltage } = machine;
  const resistance = winding + machine.circuitResistance;
  const damping = (k * k) / resistance + motor.viscousTorque;
  const drive = (k * drivingVoltage) / resistance - motor.frictionTorque;
  return drive > 0 ? (2 * drive) / (damping + Math.sqrt(damping * damping + 4 * load * drive)) : Number.NaN;
}

/** R_m that the heat of the current at that R_m would give, less that R_m [Ω]. */
function excessResistance(machine: Machine, load: number, winding: number): number {
  const { motor, ambient, torqueConstant: k } = machine;
  const current =
    (machine.drivingVoltage - k * speedAt(machine, load, winding)) / (winding + machine.circuitResistance);
  const rise =
    ambient + (motor.thermalResistance ?? 0) * current * current * winding - WINDING_REFERENCE_TEMPERATURE;
  return motor.resistance * (1 + COPPER_TEMPERATURE_COEFFICIENT * rise) - winding;
}

/** Warm R_m at one load, from a start near it [Ω]; NaN where it doesn't settle. */
function settledWinding(machine: Machine, load: number, start: number): number {
  const { motor } = machine;
  if (motor.windingTemperature !== undefined)
    return (
      motor.resistance *
      (1 + COPPER_TEMPERATURE_COEFFICIENT * (motor.windingTemperature - WINDING_REFERENCE_TEMPERATURE))
    );
  if (motor.thermalResistance === null) return motor.resistance;
  let [a, fa] = [start, excessResistance(machine, load, start)];
  // the heat at fixed voltage hardly depends on R_m: the excess falls about as R_m grows
  let b = a + fa;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    if (Math.abs(b - a) <= SETTLED * b) return b;
    const fb = excessResistance(machine, load, b);
    const next = b - (fb * (b - a)) / (fb - fa);
    [a, fa, b] = [b, fb, next];
  }
  return Number.NaN;
}

/**
 * The crossing next to a known one after a small change, by secants and without a bracket: for samples by the thousand.
 *
 *     leak(½ρu²ψ(φ)) − φ·A·u = 0, u from the balance of torques with the winding settled
 *
 * @param machine - rotor, motor, pack and supply at one state of the air
 * @param leak - what leaks, at the same air; not sealed
 * @param from - the known crossing; φ > 0 [-], slope 0 where it isn't known
 * @param into - the crossing found is written here
 * @param near - half-width, relative to φ, in which it counts as the next one; ¼ unless given [-]
 * @returns whether one was found there, on a falling excess of leak over rotor flow; where not, ask {@link crossingNear}
 *
 * Valid for a change that leaves one crossing there. Source: as {@link operatingPoints}
 */
export function followCrossing(
  machine: Machine,
  leak: Leak,
  from: Readonly<Followed>,
  into: Followed,
  near = NEAR,
): boolean {
  if (!overcomesFriction(machine)) return false;
  const { rotor, air, radius, area } = machine;
  const loadFactor = 0.5 * air.density * area * radius ** 3;
  let winding = from.winding;
  const excess = (phi: number): number => {
    const load = loadFactor * evaluatePolynomial(rotor.lambda, phi);
    winding = settledWinding(machine, load, winding);
    const tipSpeed = speedAt(machine, load, winding) * radius;
    if (!(tipSpeed > 0)) return Number.NaN;
    into.pressure = 0.5 * air.density * tipSpeed * tipSpeed * psiAt(machine, phi, tipSpeed);
    into.flow = phi * area * tipSpeed;
    return into.pressure >= 0 ? leakFlow(leak, air, into.pressure) - into.flow : Number.NaN;
  };
  let a = from.phi;
  let fa = excess(a);
  let b = from.slope < 0 ? a - fa / from.slope : a * (1 + FIRST_STEP);
  let slope = from.slope;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    if (!(Math.abs(b - from.phi) <= near * from.phi && b < machine.phiEnd)) return false;
    const fb = excess(b);
    const settled = Math.abs(b - a) <= SETTLED * b || fb === 0;
    if (b !== a && fb !== fa) slope = (fb - fa) / (b - a);
    if (settled) {
      into.phi = b;
      into.winding = winding;
      into.slope = slope;
      return slope < 0;
    }
    const next = b - fb / slope;
    [a, fa, b] = [b, fb, next];
  }
  return false;
}
