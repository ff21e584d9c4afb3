import { placeAt } from "../../decide/numberAt.ts";
import { emptyPoint, pointLaw } from "../../decide/sampledPoint.ts";
import type { PredictInput } from "../../physics/predict.ts";
import type { Book } from "../book.ts";
import { findById } from "../book.ts";
import type { BuildCalibration } from "../calibrated.ts";
import type { Resolved } from "../resolve.ts";
import type { Steps } from "../steps.ts";

/** How what pulls tell of κ answers to the numbers behind their prediction. */
export interface PullResponse {
  /** share of a change in the pulls that κ follows: 1 where they tell it all, 0 where the prior does [-] */
  readonly told: number;
  /** each test's share of the pulls, and d ln F/d ln V where its voltage was read [-] */
  readonly tests: readonly { readonly testId: string; readonly share: number; readonly byVoltage: number }[];
  /** mean of d ln F_s/dx over the pulls that share the number x with the build [1/unit of x] */
  readonly by: Readonly<Record<string, number>>;
}

/** Change of a number for its derivative, relative [-]. */
const STEP = 1e-4;

/** d ln F_s/dx of a rig, by a step to both sides. */
function derivative(rig: PredictInput, path: string): number {
  const copy = structuredClone(rig);
  const at = placeAt(copy, path);
  if (!at || at.value === 0) return 0;
  const { holder, key, value } = at;
  const solve = pointLaw(copy);
  const point = emptyPoint();
  const ends = [1 + STEP, 1 - STEP].map((factor) => {
    holder[key] = value * factor;
    solve(point);
    return Math.log(point.suction);
  });
  const slope = (ends[0] - ends[1]) / (2 * STEP * value);
  return Number.isFinite(slope) ? slope : 0;
}

/** A number of the build that the rig of a pull has as well, by the parts that it comes from. */
function isShared(path: string, build: Rig, rig: Rig, read: boolean): boolean {
  if (path.startsWith("rotor.")) return build.rotor === rig.rotor;
  if (path.startsWith("motor.")) return build.motor === rig.motor;
  if (path.startsWith("pack.")) return build.pack === rig.pack && !read && path !== "pack.openCircuitVoltage";
  return path.startsWith("skirt.") && path !== "skirt.gap";
}

interface Rig {
  readonly rotor: string;
  readonly motor: string;
  readonly pack: string;
}

const made = new WeakMap<BuildCalibration, Map<string, PullResponse>>();

/** Variance of ln κ that is left once the gap is known, over that of before. */
function toldOf({ answer, prior }: BuildCalibration): number {
  const { logFactor, below } = answer?.joint ?? { logFactor: [], below: [] };
  const middle = below.findIndex((share) => share >= 0.5);
  const left = logFactor[middle]?.variance ?? prior.pullFactor.sd ** 2;
  return Math.max(0, 1 - left / prior.pullFactor.sd ** 2);
}

function* responseOf(
  book: Book,
  build: Rig,
  calibration: BuildCalibration,
  paths: ReadonlySet<string>,
): Steps<PullResponse> {
  const { pulls, request } = calibration;
  const ids = [...new Set(pulls.map(({ testId }) => testId))];
  const by: Record<string, number> = {};
  const tests: PullResponse["tests"][number][] = [];
  for (const testId of ids) {
    const own = pulls.flatMap((each, i) => (each.testId === testId ? [i] : []));
    const share = own.length / pulls.length;
    const test = findById(book.tests, testId)?.data;
    const { input } = request.pulls[own[Math.floor(own.length / 2)]];
    const gap = calibration.answer?.gap.mean ?? input.skirt.gap;
    const rig = { ...input, skirt: { ...input.skirt, gap } };
    const read = input.pack.cellResistance === 0 && input.pack.wireResistance === 0;
    for (const path of test?.kind === "pull" ? paths : [])
      if (test?.kind === "pull" && isShared(path, build, test, read)) {
        by[path] = (by[path] ?? 0) + share * derivative(rig, path);
        yield;
      }
    const voltage = input.pack.openCircuitVoltage;
    tests.push({ testId, share, byVoltage: read ? voltage * derivative(rig, "pack.openCircuitVoltage") : 0 });
    yield;
  }
  return { told: toldOf(calibration), tests, by };
}

/**
 * How what pulls tell of a build's pull factor answers to the numbers behind their prediction, a derivative a step.
 *
 *     ln κ = ln F_pull − ln F_s(x): dκ/κ = −told·Σ (d ln F_s/dx)·dx,  told = 1 − var(ln κ | pulls)/var(ln κ)
 *
 * @param book - the whole bench book
 * @param build - its parts
 * @param resolved - the same build made into numbers
 * @param paths - of its uncertain numbers [-]
 * @returns told [-], tests, derivatives [1/unit of each number]; null where no pull tells κ
 * @throws {OutOfRangeError} on a number in the book that can't be
 *
 * Valid for changes of some per cent; numbers of a rig with other parts than the build's are taken as certain. Source: docs/method/uncertainty.md, Pulls and the numbers behind them
 */
export function* pullResponseSteps(
  book: Book,
  build: Rig,
  { pullFactor, calibration }: Resolved,
  paths: ReadonlySet<string>,
): Steps<PullResponse | null> {
  if (pullFactor.basis !== "calibrated" || !calibration) return null;
  const known = made.get(calibration) ?? new Map<string, PullResponse>();
  made.set(calibration, known);
  const key = [build.rotor, build.motor, build.pack, ...paths].join();
  const response = known.get(key) ?? (yield* responseOf(book, build, calibration, paths));
  known.set(key, response);
  return response;
}
