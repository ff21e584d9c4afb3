import type { Bench } from "../../../../shared/book/bench.ts";
import type { PullTrial } from "../../../../shared/book/readings.ts";
import { type Resolved, resolveBuild } from "../../../../shared/book/resolve.ts";
import type { Build } from "../../../../shared/model/build.ts";
import type { PullTest } from "../../../../shared/model/tests/pull.ts";
import { DEFAULT_WEATHER } from "../../../../shared/physics/air.ts";
import { type PredictInput, predict } from "../../../../shared/physics/predict.ts";
import { toSI } from "../../../../shared/units/parse.ts";

export interface PullPrediction {
  /** [N]; null where the parts don't say enough */
  readonly predicted: number | null;
  readonly missing: readonly string[];
}

/** A rig that weighs nothing is given a gram: the prediction asks for a mass, and the suction doesn't depend on it [kg]. */
const LEAST_MASS = 1e-3;
/** Taken when nobody said how full the pack was [-]. */
const FULL = 1;
/** Stands in where no wheel touches: a pull straight off doesn't ask for friction [-]. */
const ANY_FRICTION = 1;

function airOf(test: PullTest): Build["air"] {
  const { air } = test;
  if (!air) return DEFAULT_WEATHER;
  return {
    temperature: toSI(air.temperature, "temperature"),
    pressure: toSI(air.pressure, "pressure"),
    humidity: toSI(air.humidity, "fraction"),
  };
}

/** The rig as a build of the parts it was made of. */
function rigAsBuild(test: PullTest, trial: PullTrial): Build {
  const along = test.direction === "along";
  return {
    name: test.title === "" ? "pull test" : test.title,
    rotor: test.rotor,
    diameter: toSI(test.diameter, "length"),
    motor: test.motor,
    pack: test.pack,
    skirt: test.skirt,
    surface: test.surface,
    charge: test.charge ? toSI(test.charge, "fraction") : FULL,
    supply: { duty: toSI(test.duty, "fraction"), driverResistance: 0, auxCurrent: 0 },
    air: airOf(test),
    vehicle: {
      mass: Math.max(LEAST_MASS, toSI(test.rigMass, "mass")),
      rollingResistance: 0,
      driven: "both",
      wheelbase: 0.1,
      track: 0.1,
      cgHeight: 0,
      cgFromRear: 0.05,
      suctionFromRear: 0.05,
      jolt: 0,
      jetArea: null,
      jetAngle: 0,
    },
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
function atTerminals(input: PredictInput, voltage: number | null): PredictInput {
  if (voltage === null) return input;
  const pack = {
    ...input.pack,
    openCircuitVoltage: voltage / input.pack.series,
    cellResistance: 0,
    wireResistance: 0,
  };
  return { ...input, pack };
}

/** Share of the suction that a pull in this direction must overcome: all of it straight off, what friction makes of it along the surface. */
function holdShare(direction: PullTest["direction"], input: PredictInput): number {
  if (direction !== "along") return 1;
  const { wheelFriction, skirtFriction, skirtShare } = input.vehicle;
  return wheelFriction * (1 - skirtShare) + skirtFriction * skirtShare;
}

/**
 * What the parts of a pull test are predicted to hold in one pull.
 *
 *     straight off and hung from the ceiling: F_s;  along: [μ_w(1 − σ_s) + μ_s·σ_s]·F_s
 */
export function predictedPull(bench: Bench, test: PullTest, trial: PullTrial): PullPrediction {
  const resolved: Resolved = resolveBuild(bench, rigAsBuild(test, trial));
  if (!resolved.input) return { predicted: null, missing: resolved.missing.map(({ message }) => message) };
  const input = atTerminals(resolved.input, trial.voltage);
  return { predicted: holdShare(test.direction, input) * predict(input).suction, missing: [] };
}
