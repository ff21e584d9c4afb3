import type { Air } from "../air.ts";
import { propellerUnits } from "../fanlaws/propeller.ts";
import { bladeReynolds, type PropellerInput, testedSpeeds } from "../propellerLaw.ts";
import { WARM, WARM_RESULT } from "./newtonWarm.ts";

/** A propeller at one size in one air, as powers of its speed. */
export interface PropellerLoad {
  /** T = ω²·(a + b·ln ω): a and b [N·s²/rad²] */
  readonly thrust: number;
  readonly thrustDrift: number;
  /** M = ω²·(a + b·ln ω): a and b [N·m·s²/rad²] */
  readonly torque: number;
  readonly torqueDrift: number;
  /** speeds between which it was tested [rad/s] */
  readonly tested: readonly [number, number];
}

/**
 * A propeller's law at one size in one air, ready to be asked millions of times.
 *
 *     C = C₀ + c·ln(Re/Re_ref), Re ∝ ω:  T = ω²·(a + b·ln ω), M likewise
 *
 * @param rotor - coefficients [-], diameter and chord [m]
 * @param air - density [kg/m³], viscosity [Pa·s]
 * @returns thrust [N] and torque [N·m] over the speed's square and logarithm, tested speeds [rad/s]
 * @throws {OutOfRangeError} on a size or a chord that is not above 0
 *
 * Valid and source: as `thrustAndPower`
 */
export function propellerLoad(rotor: PropellerInput, air: Air): PropellerLoad {
  const unit = propellerUnits({ diameter: rotor.diameter, speed: 1, density: air.density });
  const drift = Math.log(bladeReynolds(rotor, air, 1) / rotor.referenceReynolds);
  return {
    thrust: unit.thrust * (rotor.thrust[0] + rotor.thrust[1] * drift),
    thrustDrift: unit.thrust * rotor.thrust[1],
    torque: unit.power * (rotor.power[0] + rotor.power[1] * drift),
    torqueDrift: unit.power * rotor.power[1],
    tested: testedSpeeds(rotor, air),
  };
}

/** @returns T at a speed, towards the surface [N] */
export function thrustOf({ thrust, thrustDrift }: PropellerLoad, speed: number): number {
  return speed * speed * (thrust + thrustDrift * Math.log(speed));
}

const MAX_ITERATIONS = 60;
/** A step this small is followed by none: Newton squares it, far below rounding. */
const SETTLED = 1e-9;

/**
 * Whether the torque that was found is the only one: where it rises with speed one balance alone exists, and where it falls beyond the point it must stay above 0.
 * Below a torque that falls at first, it is negative, and the balance lies above.
 */
function isAlone({ torque, torqueDrift }: PropellerLoad, logSpeed: number, unloaded: number): boolean {
  const here = torque + torqueDrift * logSpeed;
  if (torqueDrift >= 0) return here > 0;
  return here >= -0.5 * torqueDrift && torque + torqueDrift * Math.log(unloaded) > 0;
}

/**
 * Speed at which a motor, its winding settled in its own heat, and an open propeller balance.
 *
 *     V − kω = I·(R_c + R_a/(1 − R₂₀αR_th·I²)),  k·I = M_c + M_v·ω + ω²·(a + b·ln ω)
 *
 * @param load - from {@link propellerLoad}
 * @param c - motor and circuit, laid out as {@link WARM}, SI
 * @param result - laid out as {@link WARM_RESULT}; its speed is the start [rad/s]
 * @returns whether it converged to a balance that is the only one; speed, current and winding are written in place, what belongs to a cavity is NaN
 *
 * Valid for a motor that turns once its winding has settled. Newton's method, halving where a step leaves what is known of the speed. Source: docs/method/operating-point.md
 */
export function solvePropellerCase(load: PropellerLoad, c: Float64Array, result: Float64Array): boolean {
  const k = c[WARM.torqueConstant];
  const voltage = c[WARM.drivingVoltage];
  const friction = c[WARM.frictionTorque];
  const viscous = c[WARM.viscousTorque];
  const heating = c[WARM.heating];
  const circuit = c[WARM.circuitResistance];
  const winding = c[WARM.windingResistance];
  const { torque, torqueDrift } = load;
  let [low, high] = [0, voltage / k];
  let speed = result[WARM_RESULT.speed];
  if (!(speed > low && speed < high)) speed = 0.5 * high;
  let settled = false;
  for (let iteration = 1; iteration <= MAX_ITERATIONS; iteration++) {
    const log = Math.log(speed);
    const law = torque + torqueDrift * log;
    const current = (friction + speed * (viscous + speed * law)) / k;
    const cool = 1 - heating * current * current;
    if (settled) {
      if (!(cool > 0 && isAlone(load, log, voltage / k))) return false;
      result[WARM_RESULT.phi] = Number.NaN;
      result[WARM_RESULT.speed] = speed;
      result[WARM_RESULT.flow] = Number.NaN;
      result[WARM_RESULT.pressure] = Number.NaN;
      result[WARM_RESULT.gapVelocity] = Number.NaN;
      result[WARM_RESULT.iterations] = iteration;
      result[WARM_RESULT.current] = current;
      result[WARM_RESULT.windingResistance] = winding / cool;
      return true;
    }
    const emf = voltage - k * speed;
    const short = emf * cool - current * (circuit * cool + winding);
    if (cool > 0 && short > 0) low = speed;
    else high = speed;
    const byCurrent = -2 * heating * current * (emf - current * circuit) - circuit * cool - winding;
    const bySpeed = -k * cool + (byCurrent * (viscous + speed * (2 * law + torqueDrift))) / k;
    const next = speed - short / bySpeed;
    const within = cool > 0 && next >= low && next <= high;
    settled = within && Math.abs(next - speed) < SETTLED * speed;
    if (!within && high - low < SETTLED * high) return false;
    speed = within ? next : 0.5 * (low + high);
  }
  return false;
}
