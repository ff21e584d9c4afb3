import { overHardest } from "../../decide/joints/sampled.ts";
import { isUncertain } from "../../decide/uncertainInput.ts";
import {
  marginSpread,
  type Spread,
  type StatedUncertainty,
  TOGETHER,
  uncertaintyOf,
} from "../../decide/uncertainty.ts";
import type { Build } from "../../model/build.ts";
import type { TestKind } from "../../model/tests/index.ts";
import { answerOrNull } from "../../numeric/errors.ts";
import type { AnyPredictInput } from "../../physics/predictAny.ts";
import type { Book } from "../book.ts";
import { bookOfBuild } from "../bookOfBuild.ts";
import { type BuildUncertainty, buildUncertainty } from "../buildUncertainty.ts";
import { jointsUnder } from "../jointsUnder.ts";
import { resolveBuild, solvable } from "../resolve.ts";
import { jointSources } from "../uncertainty/jointSources.ts";
import { plannedCurve } from "./curve.ts";
import { plannedDischarge } from "./discharge.ts";
import { plannedFriction } from "./friction.ts";
import { plannedJoint } from "./joint.ts";
import { plannedLeak } from "./leak.ts";
import { plannedMotor } from "./motor.ts";
import type { Asked, PlanKey, Planned } from "./planned.ts";
import { plannedPlateCheck } from "./plateCheck.ts";
import { plannedPull } from "./pull.ts";
import { plannedThrust } from "./thrust.ts";
import { plannedWeighing } from "./weigh.ts";

/** The attitude whose verdict is uncertain. */
export interface WantedVerdict {
  /** θ [°] */
  readonly angle: number;
  readonly mode: "parked" | "driving";
}

/** A test worth doing. */
export interface NextTest {
  readonly key: PlanKey;
  /** null: the scale */
  readonly kind: TestKind | null;
  readonly title: string;
  readonly takes: string;
  /** stored tests that it corrects, the newest first; none where it is a test of its own */
  readonly corrects: readonly string[];
  /** part of the margin's 5 to 95 % range that it would take away [-] */
  readonly cut: number;
  /** what the margin would then be known to */
  readonly after: Spread;
}

export interface NextTests {
  /** what the margin is known to now; null where no uncertainty is stated */
  readonly before: Spread | null;
  /** the margin that is asked about is that over this joint, the hardest of the surface; null without one */
  readonly over: string | null;
  /** greatest cut first */
  readonly tests: readonly NextTest[];
}

export interface Sampling {
  /** 2048 unless given: a cut is good to about a hundredth then */
  readonly samples?: number;
  readonly seed?: number;
}

const DEFAULT_SAMPLES = 2048;
/** A cut below this is not worth the way to the bench [-]. Judgement. */
const LEAST_CUT = 0.01;
/** An uncertainty with less than this share of the variance is left as it is [-]. Judgement. */
const LEAST_SHARE = 0.005;

/** What a build's numbers leave uncertain at one attitude. */
interface SpreadNow {
  readonly spread: Spread;
  readonly over: string | null;
  /** of the variance, by kind of the test that would tell it [-] */
  readonly byKind: ReadonlyMap<TestKind | null, number>;
}

/** A build's numbers, and what is uncertain in them. */
interface InDoubt {
  readonly input: AnyPredictInput;
  readonly asked: StatedUncertainty;
  readonly sources: BuildUncertainty["sources"];
  /** the joint that it stands over, the hardest of its surface; null without one */
  readonly over: string | null;
}

/** @returns null where the build has no numbers, or none of them is uncertain */
function inDoubt(book: Book, build: Build, { samples = DEFAULT_SAMPLES, seed }: Sampling): InDoubt | null {
  const resolved = resolveBuild(book, build);
  const input = solvable(resolved);
  if (!input) return null;
  const { sources, ...uncertain } = buildUncertainty(book, build, resolved);
  if (!isUncertain(uncertain)) return null;
  const asked = { ...uncertain, samples, seed };
  const joints = resolved.input ? jointsUnder(book, build) : null;
  const over = overHardest({ build: input, joints }, asked);
  if (!over) return { input, sources, asked, over: null };
  const { hardest } = over;
  return {
    input: hardest.build,
    asked: over.asked,
    sources: { ...jointSources(book, build), ...sources },
    over: hardest.joint.name,
  };
}

function spreadNow(
  book: Book,
  build: Build,
  { angle, mode }: WantedVerdict,
  sampling: Sampling,
): SpreadNow | null {
  const now = inDoubt(book, build, sampling);
  if (!now) return null;
  const { attitudes, shares } = uncertaintyOf(now.input, { ...now.asked, angles: [angle] });
  const byKind = new Map<TestKind | null, number>();
  for (const { path, share } of shares) {
    const kind = now.sources[path.split(TOGETHER)[0]]?.test ?? null;
    byKind.set(kind, (byKind.get(kind) ?? 0) + share);
  }
  return { spread: attitudes[0][mode], byKind, over: now.over };
}

/** Between the 5 % and the 95 % margin [-]; null where no suction is needed in some samples. */
function widthOf({ p5, p95 }: Spread): number | null {
  return p5 === null || p95 === null ? null : p95 - p5;
}

/** Planned tests, and the kinds of uncertainty that each tells something of. */
const PLANS: readonly (readonly [(asked: Asked) => Planned | null, readonly (TestKind | null)[]])[] = [
  [(asked) => plannedPull(asked, "straight-off"), ["pull", "leak"]],
  [(asked) => plannedPull(asked, "along"), ["pull", "leak", "friction"]],
  [plannedLeak, ["pull", "leak"]],
  [(asked) => plannedFriction(asked, "wheels"), ["pull", "friction"]],
  [(asked) => plannedFriction(asked, "skirt"), ["friction"]],
  [plannedCurve, ["curve"]],
  [plannedPlateCheck, ["curve", "leak"]],
  [plannedThrust, ["thrust"]],
  [plannedMotor, ["motor"]],
  [plannedDischarge, ["discharge"]],
  [plannedWeighing, [null]],
  [plannedJoint, [null]],
];

/** Plans that touch an uncertainty worth having: the others could not cut what isn't there. */
function plans(asked: Asked, { byKind }: SpreadNow): Planned[] {
  const worth = (kinds: readonly (TestKind | null)[]) =>
    kinds.some((kind) => (byKind.get(kind) ?? 0) >= LEAST_SHARE);
  return PLANS.flatMap(([plan, kinds]) => (worth(kinds) ? (plan(asked) ?? []) : []));
}

/** What a test would leave; null where the book could not be read with it. */
function afterOf(plan: Planned, wanted: WantedVerdict, sampling: Sampling): Spread | null {
  return answerOrNull(() => {
    const then = inDoubt(plan.book, plan.build, sampling);
    return then && marginSpread(then.input, then.asked, wanted);
  });
}

/**
 * The tests that would cut the uncertainty about a verdict most.
 *
 *     each test is logged as if it had been done and had read what is now held true, with its instruments' scatter; cut = 1 − width after/width before
 *
 * @param book - the whole bench book
 * @param build - the build whose verdict is uncertain
 * @param wanted - attitude [°] and mode
 * @param sampling - samples and seed of the uncertainty [-]
 * @returns what the margin is known to now, over the hardest joint where the surface has one, and the tests with what they would leave, greatest cut first [-]
 * @throws {OutOfRangeError} on a number in the book that can't be
 * @throws {NotEnoughDataError} where the stated uncertainties are so large that a sample has no answer
 *
 * Valid for a test that reads what is expected; one that surprises may leave more uncertainty than there was. Source: preposterior analysis, Raiffa and Schlaifer, Applied Statistical Decision Theory (1961) (from memory); docs/method/next-test.md
 */
export function nextTests(
  book: Book,
  build: Build,
  wanted: WantedVerdict,
  sampling: Sampling = {},
): NextTests {
  const light = bookOfBuild(book, build);
  const now = spreadNow(light, build, wanted, sampling);
  const width = now && widthOf(now.spread);
  if (!now || width === null || !(width > 0))
    return { before: now?.spread ?? null, over: now?.over ?? null, tests: [] };
  const asked = { book: light, build, resolved: resolveBuild(light, build) };
  const tests = plans(asked, now).flatMap((plan) => {
    const { key, kind, title, takes, corrects = [] } = plan;
    const after = afterOf(plan, wanted, sampling);
    const left = after && widthOf(after);
    return after && left !== null
      ? [{ key, kind, title, takes, corrects, cut: 1 - left / width, after }]
      : [];
  });
  const worth = tests.filter(({ cut }) => cut >= LEAST_CUT).sort((a, b) => b.cut - a.cut);
  return { before: now.spread, over: now.over, tests: worth };
}
