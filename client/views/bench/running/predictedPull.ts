import { type Bench, resolveBuild } from "../../../../shared/book/resolve.ts";
import type { Build } from "../../../../shared/model/build.ts";
import type { PullTest } from "../../../../shared/model/tests/pull.ts";
import { DEFAULT_WEATHER } from "../../../../shared/physics/air.ts";
import { type PredictInput, predict } from "../../../../shared/physics/predict.ts";
import { toSI } from "../../../../shared/units/parse.ts";

/** What the parts should pull as they were set up, or why that can't be said. */
export type PredictedPull =
  | {
      readonly force: number;
      /** "measured" where rotor and motor rest on tests */
      readonly basis: string;
      readonly extrapolated: boolean;
    }
  | { readonly lacks: string };

type Setup = Partial<PullTest>;

/** What a prediction of suction needs no truth about: the rig is not driven, nothing is asked of its wheels. */
const RIG: Build["vehicle"] = {
  mass: 1,
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
};
const ANY_FRICTION = 0.5;
const USUAL_CHARGE = 0.6;

function airOf({ air }: Setup): Build["air"] {
  if (!air) return { ...DEFAULT_WEATHER };
  return {
    temperature: toSI(air.temperature, "temperature"),
    pressure: toSI(air.pressure, "pressure"),
    humidity: toSI(air.humidity, "fraction"),
  };
}

function buildOf(setup: Setup, gap: number | null): Build | null {
  const { rotor, diameter, motor, pack, skirt, surface } = setup;
  if (!rotor || !diameter || !motor || !pack || !skirt || !surface) return null;
  const duty = setup.duty ? toSI(setup.duty, "fraction") : 1;
  return {
    name: "pull test",
    rotor,
    diameter: toSI(diameter, "length"),
    motor,
    pack,
    skirt,
    surface,
    charge: setup.charge ? toSI(setup.charge, "fraction") : USUAL_CHARGE,
    supply: { duty, driverResistance: 0, auxCurrent: 0 },
    air: airOf(setup),
    vehicle: RIG,
    attitudes: [],
    targetMargin: 1,
    overrides: gap === null ? {} : { gap },
    uncertainty: {},
    note: "",
  };
}

/** A voltage read at the pack's terminals while the fan ran leaves the pack nothing more to lose. */
function atTerminals(input: PredictInput, voltage: number | null): PredictInput {
  if (voltage === null) return input;
  const pack = { series: 1, parallel: 1, openCircuitVoltage: voltage, cellResistance: 0, wireResistance: 0 };
  return { ...input, pack };
}

/**
 * Pull that the parts should make at a test's setting.
 *
 * @param setup - the test's parts and circumstances, as far as they were given
 * @param at - terminal voltage [V] and shim [m], null where none was read
 * @returns force on the surface [N] and what it rests on; or what is missing, in words
 */
export function predictedPull(
  setup: Setup,
  at: { readonly voltage: number | null; readonly gap: number | null },
  bench: Bench,
): PredictedPull {
  const build = buildOf(setup, at.gap);
  if (!build) return { lacks: "Choose rotor, motor, pack, skirt and surface, then the pull is predicted." };
  const known = resolveBuild(bench, build);
  const along = setup.direction === "along";
  if (along && !known.friction)
    return { lacks: "A friction test on this surface is needed to predict a pull along it." };
  const resolved = known.friction
    ? known
    : resolveBuild(bench, { ...build, overrides: { ...build.overrides, wheelFriction: ANY_FRICTION } });
  if (!resolved.input)
    return { lacks: resolved.missing[0]?.message ?? "The parts don't allow a prediction." };
  const prediction = predict(atTerminals(resolved.input, at.voltage));
  if (!prediction.point) return { lacks: prediction.warnings[0]?.message ?? "The rotor would not turn." };
  const share = along ? (known.friction?.value ?? 0) : 1;
  const tested = resolved.rotor?.basis === "measured" && resolved.motor?.basis === "measured";
  return {
    force: prediction.suction * share,
    basis: tested ? "measured" : "estimated",
    extrapolated: prediction.point.extrapolated,
  };
}
