import { namedAttitudes } from "../../shared/book/attitudes.ts";
import { type BuildWithMass, withMass } from "../../shared/book/mass/withMass.ts";
import { type Book, type Resolved, resolveBuild, solvable } from "../../shared/book/resolve.ts";
import type { Build } from "../../shared/model/build.ts";
import { asProblem } from "../../shared/numeric/errors.ts";
import { type Point, STANDARD_ANGLES } from "../../shared/physics/predict.ts";
import { type AnyPrediction, predictAny } from "../../shared/physics/predictAny.ts";
import type { PropellerPoint } from "../../shared/physics/propeller.ts";
import type { Changes, Settings } from "./handles.ts";

/** A build, made into numbers and solved. */
export interface Outcome {
  /** with the mass that counts */
  readonly build: BuildWithMass;
  readonly resolved: Resolved | null;
  readonly prediction: AnyPrediction | null;
  /** pull per pascal at the operating point [m²]; null without one, and for a propeller */
  readonly pullPerPascal: number | null;
  /** why there is no prediction although nothing is missing */
  readonly problem: string | null;
}

/** Attitudes to answer for: floor, wall, ceiling and the user's own, each once [°]. */
function anglesOf(build: Build): number[] {
  return [...new Set([...STANDARD_ANGLES, ...build.attitudes.map((each) => each.angle)])];
}

function pullPerPascal({ point, suction }: AnyPrediction): number | null {
  const pressure = point?.pressure ?? 0;
  return pressure > 0 && suction > 0 ? suction / pressure : null;
}

/** @returns the build solved; a number that cannot be, or too little data, is said and not thrown */
export function solve(book: Book, stored: Build): Outcome {
  const build = withMass(book, stored);
  const nothing = { build, resolved: null, prediction: null, pullPerPascal: null };
  const made = asProblem(() => {
    const resolved = resolveBuild(book, build);
    const input = solvable(resolved);
    if (!input) return { ...nothing, resolved, problem: null };
    const prediction = predictAny(input, anglesOf(build));
    return { build, resolved, prediction, pullPerPascal: pullPerPascal(prediction), problem: null };
  });
  return "answered" in made ? made.answered : { ...nothing, problem: made.problem };
}

/** @returns whether the book lacks something that the build's figures need; what can be said stands in `resolved.partial` */
export function isLacking({ prediction, problem }: Outcome): boolean {
  return prediction === null && problem === null;
}

/** @returns the operating point of fan and leak; null without one, and for a propeller */
export function cavityPoint({ prediction }: Pick<Outcome, "prediction">): Point | null {
  const point = prediction?.point ?? null;
  return point && point.pressure !== null ? point : null;
}

/** @returns the speed and thrust that a propeller settles at; null where it stands still, and for a ducted rotor */
export function propellerPoint({ prediction }: Pick<Outcome, "prediction">): PropellerPoint | null {
  const point = prediction?.point ?? null;
  return point && point.pressure === null ? point : null;
}

/** @returns where the handles stand without a change, SI */
export function settingsOf(book: Book, build: Build, resolved: Resolved | null): Settings {
  const pack = book.packs.find((each) => each.id === build.pack);
  const surface = book.surfaces.find((each) => each.id === build.surface);
  return {
    diameter: build.diameter,
    series: build.overrides.series ?? pack?.data.series ?? 1,
    charge: build.charge,
    duty: build.supply.duty,
    gap: resolved?.gap.value ?? build.overrides.gap ?? 0,
    mass: withMass(book, build).vehicle.mass,
    wheelFriction:
      resolved?.friction?.value ?? build.overrides.wheelFriction ?? surface?.data.wheelFriction ?? 0,
    temperature: build.air.temperature,
    pressure: build.air.pressure,
  };
}

export interface AttitudeMargins {
  /** as the sentence says it: "the wall", "the roof pane at 153°" */
  readonly name: string;
  readonly angle: number;
  /** null where no suction is needed */
  readonly parked: number | null;
  readonly driving: number | null;
}

/** One attitude with its verdict, for the table and for the sentence. */
export interface AttitudeRow extends AttitudeMargins {
  /** as the table says it: "Roof pane" */
  readonly title: string;
  readonly parkedModes: readonly string[];
  readonly drivingModes: readonly string[];
}

/** @returns every attitude that the build must hold, with its margins */
export function attitudeRows({ build, prediction }: Outcome): AttitudeRow[] {
  if (!prediction) return [];
  return namedAttitudes(build).flatMap((named) => {
    const hold = prediction.attitudes.find((each) => each.angle === named.angle);
    if (!hold) return [];
    return [
      {
        ...named,
        parked: hold.parked.margin,
        driving: hold.driving.margin,
        parkedModes: hold.parked.governs,
        drivingModes: hold.driving.governs,
      },
    ];
  });
}

/** @returns whether anything is tried */
export function isChanged(changes: Changes): boolean {
  return Object.keys(changes).length > 0;
}
