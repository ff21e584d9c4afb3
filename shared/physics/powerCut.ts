import { requirePositive } from "../numeric/errors.ts";
import { integral } from "../numeric/integral.ts";
import { findRoot } from "../numeric/root.ts";
import { holdUnder } from "./hold/holdUnder.ts";
import { compileHold } from "./hold/law.ts";
import { shaftTorque } from "./motor.ts";
import { assembleCircuit } from "./point/machine.ts";
import { type Turning, turningOf } from "./powerCut/turning.ts";
import { STANDARD_ANGLES } from "./predict.ts";
import { type AnyPredictInput, predictAny } from "./predictAny.ts";
import { windingResistance } from "./winding.ts";

export type PowerCutInput = AnyPredictInput & {
  /** J of rotor and motor together [kg·m²] */
  readonly inertia: number;
};

type State = "parked" | "driving";

/** Seconds from the cut until one attitude lets go; 0 where it isn't held even while running, null where no pull is needed. */
export interface LettingGo {
  /** θ [°] */
  readonly angle: number;
  readonly parked: number | null;
  readonly driving: number | null;
}

export interface PowerCut {
  readonly attitudes: readonly LettingGo[];
  /** from switching on, cold and standing, until every one of them holds, parked [s]; null where one never does */
  readonly toHold: number | null;
}

/** Least speed, relative to the running one, at which a hold is looked for: a millionth of the pull. */
const SLOWEST = 1e-3;

/** ω down to which an attitude holds [rad/s]; null where it needs no pull, infinite where even the running speed is too little. */
function holdingSpeed(margin: (speed: number) => number | null, running: number): number | null {
  const now = margin(running);
  if (now === null) return null;
  if (now < 1) return Number.POSITIVE_INFINITY;
  const spare = (speed: number) => (margin(speed) ?? Number.POSITIVE_INFINITY) - 1;
  const least = SLOWEST * running;
  return now === 1 || spare(least) >= 0
    ? now === 1
      ? running
      : least
    : findRoot(spare, least, running).root;
}

/** ∫ J dω/M as ∫ J/(M·s²) ds over s = 1/ω, which is a straight line under a quadratic leak. */
function coastingTime({ motor, inertia }: PowerCutInput, turning: Turning, from: number, to: number): number {
  if (!(to < from)) return 0;
  const brake = (speed: number) => turning.torque(speed) + motor.frictionTorque + motor.viscousTorque * speed;
  return integral((s) => inertia / (brake(1 / s) * s ** 2), 1 / from, 1 / to);
}

/** From standing to a speed, the winding cold. */
function startingTime(input: PowerCutInput, turning: Turning, to: number): number | null {
  const { motor, inertia, air } = input;
  const { torqueConstant, drivingVoltage, circuitResistance } = assembleCircuit(input);
  const cold =
    motor.thermalResistance === null
      ? motor.resistance
      : windingResistance(motor.resistance, air.temperature);
  const net = (speed: number) => {
    const current = (drivingVoltage - torqueConstant * speed) / (cold + circuitResistance);
    return shaftTorque(motor, current, speed) - turning.torque(speed);
  };
  if (!(net(to) > 0)) return null;
  return integral((speed) => inertia / net(speed), 0, to);
}

/**
 * How long a build holds after its power is cut, and how long it takes to hold once switched on.
 *
 *     J·dω/dt = −(M_rotor(ω) + M_c + M_v·ω):  t = ∫ J dω/M from the speed that just holds to the running one;  on: J·dω/dt = k·I − M_c − M_v·ω − M_rotor
 *
 * @param input - build as a prediction takes it, SI; inertia [kg·m²]
 * @param angles - attitudes to answer for, floor, wall, ceiling unless given; the worst ones join them [°]
 * @returns seconds by attitude, parked and driving; seconds from switching on to holding [s]
 * @throws {OutOfRangeError} on an inertia that is not above 0, with the path of a number that can't be
 * @throws {NotEnoughDataError} where the rotor's curve does not reach down to the leak
 *
 * Valid for a flow that follows the speed at once, a motor that is cut off and not braked, and a full voltage at once when switched on. Source: docs/method/power-cut.md
 */
export function powerCut(input: PowerCutInput, angles: readonly number[] = STANDARD_ANGLES): PowerCut {
  requirePositive("inertia", input.inertia);
  const { point, worst } = predictAny(input, []);
  const asked = [...new Set([...angles, worst.parked.angle, worst.driving.angle])];
  const turning = turningOf(input);
  const law = compileHold(input.vehicle);
  const running = point?.speed ?? 0;
  const speedOf = (angle: number, state: State) => {
    if (!(running > 0))
      return holdUnder(law, { set: 0, giving: null }, angle)[state].margin === null
        ? null
        : Number.POSITIVE_INFINITY;
    return holdingSpeed((speed) => holdUnder(law, turning.pull(speed), angle)[state].margin, running);
  };
  const speeds = asked.map((angle) => ({
    angle,
    parked: speedOf(angle, "parked"),
    driving: speedOf(angle, "driving"),
  }));
  const timeFrom = (to: number | null) => (to === null ? null : coastingTime(input, turning, running, to));
  const needed = Math.max(0, ...speeds.map(({ parked }) => parked ?? 0));
  return {
    attitudes: speeds.map(({ angle, parked, driving }) => ({
      angle,
      parked: timeFrom(parked),
      driving: timeFrom(driving),
    })),
    toHold: needed === 0 ? 0 : Number.isFinite(needed) ? startingTime(input, turning, needed) : null,
  };
}
