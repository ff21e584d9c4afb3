import { airNotes } from "../air.ts";
import { holdOf, type StateMargin } from "../hold/holdAt.ts";
import { compileHold } from "../hold/law.ts";
import { type LeastFriction, leastFriction, leastFrictionAnywhere } from "../hold/leastFriction.ts";
import { vehicleNotes } from "../hold/vehicle.ts";
import { RPM } from "../motor.ts";
import type { Note } from "../note.ts";
import { type AnyPrediction, predictAny } from "../predictAny.ts";
import type { Coupled, PartialInput, PartialVehicle } from "./input.ts";
import { type SpeedPoint, speedPoints } from "./speedPoint.ts";

/** Friction of the wheels that would do, where it isn't known. */
export interface FrictionNeeded {
  /** for margin 1 */
  readonly holds: LeastFriction;
  /** for the margin wanted */
  readonly target: LeastFriction;
}

/** How a pull holds on one attitude, as far as it can be said. */
export interface PartialHold {
  /** [°] */
  readonly angle: number;
  /** margin against lift-off and tip, which no friction changes; null where neither needs any pull */
  readonly gripless: number | null;
  /** where the friction is known */
  readonly verdict: { readonly parked: StateMargin; readonly driving: StateMargin } | null;
  /** where it isn't */
  readonly needs: FrictionNeeded | null;
}

/** One state of a build of which something isn't known. */
export interface PartialMoment extends SpeedPoint {
  /** [rpm] */
  readonly rpm: number;
  /** currents, voltage, winding: where the motor's own speed is known */
  readonly point: AnyPrediction["point"];
  readonly holds: readonly PartialHold[];
  /** friction that holds it from floor to ceiling, where none is known */
  readonly everywhere: FrictionNeeded | null;
}

export interface PartialAnswer {
  /** one where a motor turns the rotor; by rising speed where it is asked at the speeds of its tests; none where it doesn't turn or never meets the leak */
  readonly moments: readonly PartialMoment[];
  readonly warnings: readonly Note[];
}

/** What is wanted of an answer. */
export interface PartialAsked {
  /** attitudes [°] */
  readonly angles: readonly number[];
  /** margin wanted [-] */
  readonly target: number;
}

/** Stands for a friction that isn't known where a law wants one: nothing that it changes is read. */
const UNREAD_FRICTION = 0;

const lesser = (a: number | null, b: number | null): number | null =>
  a === null || b === null ? (a ?? b) : Math.min(a, b);

/**
 * How a pull holds on each attitude, as far as the friction allows to say.
 *
 *     known: margins as {@link holdOf};  not known: margins of lift-off and tip, and the friction that would do
 *
 * @param vehicle - SI, friction null where it isn't known
 * @param suction - pull made [N]
 * @param asked - attitudes [°], margin wanted [-]
 * @returns one an attitude, in their order [-]
 * @throws {OutOfRangeError} on a vehicle that can't be, an angle beyond 0…180
 *
 * Valid and source: as {@link holdOf}
 */
export function partialHolds(
  vehicle: PartialVehicle,
  suction: number,
  { angles, target }: PartialAsked,
): PartialHold[] {
  const pull = Math.max(0, suction);
  const { wheelFriction } = vehicle;
  const law = compileHold({ ...vehicle, wheelFriction: wheelFriction ?? UNREAD_FRICTION });
  return angles.map((angle) => {
    const { margins, parked, driving } = holdOf(law, pull, angle);
    return {
      angle,
      gripless: lesser(margins.liftOff, margins.tip),
      verdict: wheelFriction === null ? null : { parked, driving },
      needs:
        wheelFriction === null
          ? needed((margin) => leastFriction(vehicle, pull, angle, margin), target)
          : null,
    };
  });
}

function needed(least: (margin: number) => LeastFriction, target: number): FrictionNeeded {
  return { holds: least(1), target: least(target) };
}

function momentOf(
  vehicle: PartialVehicle,
  at: SpeedPoint,
  point: PartialMoment["point"],
  asked: PartialAsked,
): PartialMoment {
  const pull = Math.max(0, at.suction);
  const anywhere = (margin: number) => leastFrictionAnywhere(vehicle, pull, margin);
  return {
    ...at,
    rpm: at.speed / RPM,
    point,
    holds: partialHolds(vehicle, pull, asked),
    everywhere: vehicle.wheelFriction === null ? needed(anywhere, asked.target) : null,
  };
}

/** What friction would do is said for one pull. */
function gapNotes({ verticalStiffness }: PartialVehicle): Note[] {
  if ((verticalStiffness ?? null) === null) return [];
  const message =
    "The running gear gives, but as long as something isn't known the gap is taken as set: a loaded vehicle holds a little better, one about to lift off a little worse.";
  return [{ code: "gap-as-set", message }];
}

/** Notes on a friction that isn't known speak of its stand-in. */
const readable = (notes: readonly Note[], { wheelFriction }: PartialVehicle): Note[] =>
  notes.filter(({ code }) => wheelFriction !== null || !code.startsWith("wheel-friction"));

function coupledAnswer({ machine }: Coupled, vehicle: PartialVehicle, asked: PartialAsked): PartialAnswer {
  const known = { ...vehicle, wheelFriction: vehicle.wheelFriction ?? UNREAD_FRICTION };
  const { point, suction, warnings } = predictAny({ ...machine, vehicle: known }, []);
  const read = [...readable(warnings, vehicle), ...gapNotes(vehicle)];
  if (!point) return { moments: [], warnings: read };
  const { speed, flow, pressure, extrapolated } = point;
  const at = { speed, flow, pressure, suction, extrapolated };
  return { moments: [momentOf(vehicle, at, point, asked)], warnings: read };
}

/**
 * What can be said of a build of which something isn't known.
 *
 *     motor and pack known: as {@link predict};  else the rotor at the speeds of its tests
 *
 * @param input - what is known, all SI
 * @param asked - attitudes [°], margin wanted [-]
 * @returns states with what they hold; where friction isn't known, the friction that would do, and no verdict
 * @throws {OutOfRangeError} with the path of a number that can't be
 * @throws {NotEnoughDataError} where the rotor's curve does not reach down to the leak
 *
 * Valid as its parts. Source: docs/method/operating-point.md
 */
export function partialAnswer({ blower, vehicle }: PartialInput, asked: PartialAsked): PartialAnswer {
  if (blower.turnedBy === "motor") return coupledAnswer(blower, vehicle, asked);
  const points = speedPoints(blower, vehicle);
  const wheels = vehicleNotes({ ...vehicle, wheelFriction: vehicle.wheelFriction ?? UNREAD_FRICTION });
  return {
    moments: points.map((at) => momentOf(vehicle, at, null, asked)),
    warnings: [...airNotes(blower.air), ...readable(wheels, vehicle), ...gapNotes(vehicle)],
  };
}
