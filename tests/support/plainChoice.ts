import type { Problem, TriedSkirt, TriedStand, Wants } from "#shared/decide/choose/problem.ts";
import type { Limit, Places } from "#shared/decide/choose/result.ts";
import { keepForMargin } from "#shared/decide/size/keep.ts";
import { type PredictInput, predict } from "#shared/physics/predict.ts";
import { type AnyPredictInput, type AnyPrediction, predictAny } from "#shared/physics/predictAny.ts";
import type { Keep } from "#shared/physics/rundown/input.ts";
import { type RundownInput, runDown } from "#shared/physics/rundown.ts";

/** Choosing once more, as plainly as it can be written: each combination a build of its own, every pair compared. */
export interface PlainCombination {
  readonly places: Places;
  readonly prediction: AnyPrediction;
  readonly mass: number;
  readonly margin: number;
  /** s; NaN where the motor does not turn */
  readonly time: number;
  /** what the combination has of each limit, and what is allowed where it is asked for */
  readonly limits: readonly {
    readonly limit: Limit;
    readonly value: number;
    readonly allowed: number;
    readonly least: boolean;
  }[];
}

/** @returns whether another point has as much of everything and more of something; larger keys are better */
export function dominatedBySome(keys: readonly ArrayLike<number>[], i: number): boolean {
  const others = Array.from({ length: keys[0].length }, (_, j) => j);
  return others.some((j) => keys.every((key) => key[j] >= key[i]) && keys.some((key) => key[j] > key[i]));
}

/** @returns every combination of places, the last of the list of digits running fastest; those of propellers last */
export function everyPlace(problem: Problem): Places[] {
  const { rotors, skirts, propellers = [], stands = [] } = problem;
  const found: Places[] = [];
  const add = (
    open: boolean,
    families: readonly { readonly sizes: readonly unknown[] }[],
    under: readonly { readonly gaps: readonly unknown[] }[],
  ) =>
    problem.motors.forEach((_m, motor) => {
      families.forEach(({ sizes }, rotor) => {
        sizes.forEach((_s, size) => {
          problem.packs.forEach((_p, pack) => {
            problem.duties.forEach((_d, duty) => {
              under.forEach(({ gaps }, skirt) => {
                gaps.forEach((_g, gap) => {
                  found.push({ open, motor, rotor, size, pack, duty, skirt, gap });
                });
              });
            });
          });
        });
      });
    });
  add(false, rotors, skirts);
  add(
    true,
    propellers,
    stands.map(() => ({ gaps: [null] })),
  );
  return found;
}

function chosen(problem: Problem, places: Places) {
  const { propellers = [], stands = [], rotors, skirts } = problem;
  const family = places.open ? propellers[places.rotor] : rotors[places.rotor];
  return {
    motor: problem.motors[places.motor],
    size: family.sizes[places.size],
    pack: problem.packs[places.pack],
    stand: places.open ? stands[places.skirt] : skirts[places.skirt],
    duty: problem.duties[places.duty],
  };
}

function rotorOf(problem: Problem, places: Places) {
  const { propellers = [], rotors } = problem;
  const { diameter } = chosen(problem, places).size;
  if (!places.open) return { ...rotors[places.rotor], diameter };
  const { chordRatio, ...propeller } = propellers[places.rotor];
  return { ...propeller, kind: "propeller" as const, diameter, chord: chordRatio * diameter };
}

function buildOf(problem: Problem, places: Places, voltage: number): AnyPredictInput {
  const { motor, size, pack, stand, duty } = chosen(problem, places);
  const { air, vehicle, supply } = problem.fixed;
  const mass = vehicle.mass + motor.mass + size.mass + pack.mass + stand.mass;
  const common = {
    air,
    motor,
    pack: { ...pack, cellResistance: pack.cell.resistance, openCircuitVoltage: voltage },
    supply: { ...supply, duty },
    vehicle: {
      ...vehicle,
      mass,
      skirtShare: stand.share,
      wheelFriction: stand.wheelFriction,
      skirtFriction: stand.skirtFriction,
    },
  };
  const rotor = rotorOf(problem, places);
  if ("kind" in rotor) return { ...common, rotor };
  const skirt = problem.skirts[places.skirt];
  return { ...common, rotor, skirt: { ...skirt, gap: skirt.gaps[places.gap] } };
}

function marginsOf({ wants }: Problem, prediction: AnyPrediction, mode: "parked" | "driving"): number[] {
  return wants.attitudes
    .filter((wanted) => wanted.mode === mode)
    .map(({ angle }) => {
      const found = prediction.attitudes.find((attitude) => attitude.angle === angle);
      return (
        (angle === "worst" ? prediction.worst[mode].margin : found?.[mode].margin) ?? Number.POSITIVE_INFINITY
      );
    });
}

/** A propeller presses over a joint as beside it. */
function crossingOpen(problem: Problem, prediction: AnyPrediction, { crosses }: TriedStand): number {
  const margins = (["parked", "driving"] as const).flatMap((mode) => marginsOf(problem, prediction, mode));
  return crosses ? Math.min(...margins) : Number.POSITIVE_INFINITY;
}

/** Least margin over the joints, each way a build of its own: the span at the depth more, or two slots more. */
function crossingOf(problem: Problem, build: PredictInput, joints: TriedSkirt["joints"]): number {
  const { skirt } = build;
  const angles = problem.wants.attitudes.flatMap(({ angle }) => (angle === "worst" ? [] : [angle]));
  const over = (joints?.joints ?? []).flatMap(({ depth, width, met }) => [
    ...(met === "across" ? [] : [{ ...skirt, joint: { span: joints?.span ?? 0, depth } }]),
    ...(met === "along"
      ? []
      : [{ ...skirt, openings: [...skirt.openings, { area: width * depth }, { area: width * depth }] }]),
  ]);
  const margins = over.flatMap((each) => {
    const prediction = predict({ ...build, skirt: each }, angles);
    return [...marginsOf(problem, prediction, "parked"), ...marginsOf(problem, prediction, "driving")];
  });
  return Math.min(Number.POSITIVE_INFINITY, ...margins);
}

/** By what is run down: questions that differ in their wants alone share their runs. */
const runs = new Map<string, number>();

function timeOf(run: RundownInput): number {
  const key = JSON.stringify(run);
  const time = runs.get(key) ?? runDown(run).end.time;
  runs.set(key, time);
  return time;
}

/** How long the run-down keeps the hardest wanted attitude's margin. */
function keptTimeOf(run: RundownInput, { attitudes, targetMargin: margin, leastKeptTime }: Wants): number {
  if ((leastKeptTime ?? null) === null) return Number.NaN;
  const keeps = attitudes.map(({ angle, mode }) => keepForMargin(run, { angle, mode, margin }));
  const amount = (keep: Keep) => ("thrust" in keep ? keep.thrust : keep.pressure);
  const [keep] = keeps.sort((a, b) => amount(b) - amount(a));
  const { end, keep: kept } = runDown({ ...run, keep });
  return kept?.fullThrottleFrom ?? end.time;
}

/** @returns one combination, solved by the prediction and the run-down of its build; `voltage`: V_oc of one cell at the charge */
export function plainCombination(problem: Problem, places: Places, voltage: number): PlainCombination {
  const { motor, size, pack, stand, duty } = chosen(problem, places);
  const { wants, fixed } = problem;
  const build = buildOf(problem, places, voltage);
  const angles = wants.attitudes.flatMap(({ angle }) => (angle === "worst" ? [] : [angle]));
  const prediction = predictAny(build, angles);
  const { point } = prediction;
  const run = {
    ...build,
    pack,
    startCharge: fixed.charge,
    angles: [],
  };
  const time = point ? timeOf(run) : Number.NaN;
  const parked = marginsOf(problem, prediction, "parked");
  const driving = marginsOf(problem, prediction, "driving");
  const unknown = Number.NaN;
  const sum = (of: "height" | "price", absent: number) =>
    [motor, size, pack, stand].reduce((total, part) => total + (part[of] ?? absent), fixed[of]);
  const least = (limit: Limit, value: number, allowed: number | null | undefined) =>
    allowed === null || allowed === undefined ? [] : [{ limit, value, allowed, least: true }];
  const most = (limit: Limit, value: number, allowed: number | null | undefined) =>
    allowed === null || allowed === undefined ? [] : [{ limit, value, allowed, least: false }];
  const warm = point && motor.thermalResistance !== null ? point.windingTemperature : unknown;
  const windingLimits = [wants.mostWinding, wants.ratings ? motor.windingLimit : null].filter(
    (limit) => typeof limit === "number",
  );
  const rated = <T>(value: T) => (wants.ratings ? value : null);
  const crossing =
    "skirt" in build
      ? crossingOf(problem, build, problem.skirts[places.skirt].joints ?? null)
      : crossingOpen(problem, prediction, stand as TriedStand);
  const burst = "burstSpeed" in size && typeof size.burstSpeed === "number" ? size.burstSpeed : unknown;
  const factor = point ? burst / point.speed : unknown;
  const limits = [
    ...least("point", point ? 1 : 0, 1),
    ...least("parked", Math.min(...parked), parked.length > 0 ? wants.targetMargin : null),
    ...least("driving", Math.min(...driving), driving.length > 0 ? wants.targetMargin : null),
    ...least("crossing", crossing, wants.leastCrossing),
    ...most("windingTemperature", warm, windingLimits.length > 0 ? Math.min(...windingLimits) : null),
    ...least("rotorFactor", factor, places.open ? null : wants.leastRotorFactor),
    ...most("motorCurrent", point?.motorCurrent ?? unknown, rated(motor.maxCurrent)),
    ...most("motorVoltage", point ? duty * point.packVoltage : unknown, rated(motor.ratedVoltage)),
    ...most("cellCurrent", point ? point.packCurrent / pack.parallel : unknown, rated(pack.cell.maxCurrent)),
    ...most("height", sum("height", 0), wants.mostHeight),
    ...most("price", sum("price", unknown), wants.mostPrice),
    ...least("time", time, wants.leastTime),
    ...least("keptTime", point ? keptTimeOf(run, wants) : unknown, wants.leastKeptTime),
  ];
  return {
    places,
    prediction,
    mass: build.vehicle.mass,
    margin: Math.min(...parked, ...driving),
    time,
    limits,
  };
}

/** @returns the limits that a combination breaks; a value that is not known breaks its limit */
export function plainlyBroken({
  limits,
}: PlainCombination): { limit: Limit; value: number; allowed: number; share: number }[] {
  return limits
    .filter(({ value, allowed, least }) => !(least ? value >= allowed : value <= allowed))
    .map(({ limit, value, allowed }) => {
      const share =
        limit === "point" || Number.isNaN(value)
          ? Number.POSITIVE_INFINITY
          : Math.abs(value - allowed) / allowed;
      return { limit, value, allowed, share };
    });
}
