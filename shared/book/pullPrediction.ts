import type { Build } from "../model/build.ts";
import type { PullTest } from "../model/tests/pull.ts";
import { DEFAULT_WEATHER } from "../physics/air.ts";
import { STANDARD_GRAVITY } from "../physics/constants.ts";
import { dutyFromCommand } from "../physics/motor.ts";
import type { PredictInput } from "../physics/predict.ts";
import { type AnyPredictInput, predictAny } from "../physics/predictAny.ts";
import { toSI } from "../units/quantity.ts";
import { type Book, oncePerBook } from "./book.ts";
import { motorBasis } from "./motorBasis.ts";
import { readyForVoltage } from "./partial.ts";
import type { PullTrial } from "./readings/pull.ts";
import { type Resolved, solvable } from "./resolve/resolved.ts";
import { resolveAsSet } from "./resolve/resolveWith.ts";
import { STAND_FRAME } from "./standVehicle.ts";
import { offsetInUse } from "./throttle.ts";

export interface PullPrediction {
  /** [N]; null where the parts don't say enough */
  readonly predicted: number | null;
  readonly missing: readonly string[];
  /** the operating point lies outside the rotor's tested range */
  readonly extrapolated: boolean;
}

/** A rig that weighs nothing is given a gram: the prediction asks for a mass, and the suction doesn't depend on it [kg]. */
const LEAST_MASS = 1e-3;
/** Taken when nobody said how full the pack was, as for a build [-]. */
const USUAL_CHARGE = 0.6;
/** Stands in where no wheel touches: a pull straight off doesn't ask for friction [-]. */
const ANY_FRICTION = 1;

/** @returns the weather of a test's day as a build states it; 20 °C, 101 325 Pa, 50 % where none was read */
export function weatherOf({ air }: Pick<PullTest, "air">): Build["air"] {
  if (!air) return DEFAULT_WEATHER;
  return {
    temperature: toSI(air.temperature, "temperature"),
    pressure: toSI(air.pressure, "pressure"),
    humidity: toSI(air.humidity, "fraction"),
  };
}

/** The rig as a build of the parts it was made of; its throttle was set as a command. */
export function rigAsBuild(book: Book, test: PullTest, trial: Pick<PullTrial, "voltage" | "gap">): Build {
  const offset = offsetInUse(motorBasis(book, test.motor)?.throttle);
  const along = test.direction === "along";
  return {
    name: test.title === "" ? "pull test" : test.title,
    rotor: test.rotor,
    diameter: toSI(test.diameter, "length"),
    motor: test.motor,
    pack: test.pack,
    skirt: test.skirt,
    surface: test.surface,
    charge: test.charge ? toSI(test.charge, "fraction") : USUAL_CHARGE,
    supply: {
      duty: dutyFromCommand(toSI(test.duty, "fraction"), offset),
      driverResistance: 0,
      auxCurrent: 0,
    },
    air: weatherOf(test),
    vehicle: {
      mass: Math.max(LEAST_MASS, toSI(test.rigMass, "mass")),
      ...STAND_FRAME,
      verticalStiffness: null,
      gapLoad: null,
    },
    gear: null,
    ledger: [],
    stacks: [],
    places: {},
    exchanges: { motors: [], rotors: [], packs: [], skirts: [] },
    attitudes: [],
    targetMargin: 1,
    overrides: {
      ...(trial.gap === null ? {} : { gap: trial.gap }),
      ...(along ? {} : { wheelFriction: ANY_FRICTION }),
    },
    uncertainty: {},
    note: "",
  };
}

/** A voltage read at the terminals under load already holds the pack's and the wire's sag. */
export function atTerminals<T extends AnyPredictInput>(input: T, voltage: number | null): T {
  if (voltage === null) return input;
  const pack = {
    ...input.pack,
    openCircuitVoltage: voltage / input.pack.series,
    cellResistance: 0,
    wireResistance: 0,
  };
  return { ...input, pack };
}

/** @returns friction that wheels and skirt share by the load that each carries [-] */
export function sharedFriction({
  wheelFriction,
  skirtFriction,
  skirtShare,
}: PredictInput["vehicle"]): number {
  return wheelFriction * (1 - skirtShare) + skirtFriction * skirtShare;
}

/** The rig of a test at a shim, resolved once for all of its rows: they differ by the voltage alone. */
function resolvedRig(book: Book, test: PullTest, trial: Pick<PullTrial, "voltage" | "gap">): Resolved {
  const known = oncePerBook(
    book,
    "rigs of pull tests",
    () => new WeakMap<PullTest, Map<number | null, Resolved>>(),
  );
  const ofTest = known.get(test) ?? new Map<number | null, Resolved>();
  const resolved = ofTest.get(trial.gap) ?? resolveAsSet(book, rigAsBuild(book, test, trial));
  known.set(test, ofTest.set(trial.gap, resolved));
  return resolved;
}

/**
 * Load that the parts of a pull test are predicted to hold in one pull, the gap as set: no pull test has a word in it.
 *
 *     straight off and hung from the ceiling: F_s, or a propeller's thrust;  dragged along: [μ_w(1 − σ_s) + μ_s·σ_s]·(F_s + W_rig)
 *
 * @param book - the whole bench book
 * @param test - as stored
 * @param trial - voltage read [V], shim [m]
 * @returns the load, to set beside the bracket of {@link pullTrials} [N]; null, and what is missing, where the parts don't say enough
 * @throws {OutOfRangeError} on a number in the book that can't be
 */
export function predictedPull(
  book: Book,
  test: PullTest,
  trial: Pick<PullTrial, "voltage" | "gap">,
): PullPrediction {
  const resolved = resolvedRig(book, test, trial);
  const numbers = solvable(resolved) ?? (trial.voltage === null ? null : readyForVoltage(resolved.partial));
  if (!numbers)
    return { predicted: null, missing: resolved.missing.map(({ message }) => message), extrapolated: false };
  const input = atTerminals(numbers, trial.voltage);
  const { suction, point } = predictAny(input);
  const extrapolated = point?.extrapolated ?? false;
  if (test.direction !== "along") return { predicted: suction, missing: [], extrapolated };
  const rig = toSI(test.rigMass, "mass") * STANDARD_GRAVITY;
  return { predicted: sharedFriction(input.vehicle) * (suction + rig), missing: [], extrapolated };
}
