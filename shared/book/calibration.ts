import {
  type Calibration,
  type CalibrationLeak,
  type CalibrationNumbers,
  type CalibrationPull,
  type CalibrationRequest,
  calibrationNumbers,
  type GapMoments,
  gapWithoutEach,
  withNotes,
} from "../fit/calibration.ts";
import { answerOrNull, asProblem } from "../numeric/errors.ts";
import type { PredictInput } from "../physics/predict.ts";
import { type AnyPredictInput, isPropeller } from "../physics/predictAny.ts";
import { taped } from "../physics/skirt.ts";
import { toSI } from "../units/quantity.ts";
import { type Book, findById, oncePerBook, type StoredTest, testsOf } from "./book.ts";
import type { BuildCalibration, CalibratedBuild, RowOfTest } from "./calibrated.ts";
import { ANY_FRICTION, frictionPrior, gapPrior, type Setting } from "./calibrationPriors.ts";
import { readyForVoltage } from "./partial.ts";
import { ANY_FACTOR } from "./pullFactorBasis.ts";
import { atTerminals, rigAsBuild, weatherOf } from "./pullPrediction.ts";
import { leakPoints } from "./readings/leak.ts";
import { type PullTrial, pullTrials } from "./readings/pull.ts";
import { inUse, type Reading } from "./readings/reading.ts";
import { remembered } from "./remembered.ts";
import { resolveAsSet } from "./resolve/resolveWith.ts";

export type { BuildCalibration, CalibratedBuild, RowOfTest } from "./calibrated.ts";

/** Shims closer than this to the set gap count as that gap [m]. */
const SAME_GAP = 1e-6;
/** With fewer pulls a calibration would be the prior's word. Judgement. */
const LEAST_PULLS = 2;

/** A book holds few pairs of skirt and surface, and a handful of tests each to leave out. */
const KEPT = 64;
const numbersOnce = remembered(calibrationNumbers, KEPT);
const calibratedOnce = remembered(
  (request: CalibrationRequest) => withNotes(request, numbersOnce(request)),
  KEPT,
);

const says = ({ held, letGo }: PullTrial): boolean => held > 0 || letGo !== null;

const isOn = ({ skirt, surface }: Setting, data: { readonly skirt: string; readonly surface: string }) =>
  data.skirt === skirt.id && data.surface === surface.id;

const ductedOf = (input: AnyPredictInput | null): PredictInput | null =>
  input && !isPropeller(input) ? input : null;

/** The rig of a test, whatever the gap and friction; a leak test at the set gap stands in the gap's place, as in a prediction. Null where the book doesn't know its parts well enough; of its cells it need know nothing where the voltage was read in every pull. */
function rigOf({ book, skirt }: Setting, { data }: StoredTest<"pull">, read: boolean): PredictInput | null {
  const rig = rigAsBuild(book, data, { voltage: null, gap: null });
  const overrides = { gap: skirt.data.gap, wheelFriction: ANY_FRICTION.mean };
  return answerOrNull(() => {
    const { input: whole, partial } = resolveAsSet(book, { ...rig, overrides });
    return whole ?? (read ? ductedOf(readyForVoltage(partial)) : null);
  });
}

type PullRow = RowOfTest & { readonly pull: CalibrationPull | null };

function pullRows(setting: Setting): PullRow[] {
  const { book, skirt, surface } = setting;
  return oncePerBook(book, `pulls ${skirt.id} ${surface.id}`, () =>
    pullTestsOn(setting).flatMap((test) => pullRowsIn(setting, test)),
  );
}

/** @returns the pull tests of a skirt on a surface */
export const pullTestsOn = (setting: Setting): StoredTest<"pull">[] =>
  testsOf(setting.book, "pull").filter(({ data }) => isOn(setting, data));

/** @returns the pulls of one of them at the set gap, each with its rig; worked out once for a book */
export function pullRowsIn(setting: Setting, test: StoredTest<"pull">): PullRow[] {
  const { book, skirt, surface } = setting;
  return oncePerBook(book, `pulls of ${test.id} ${skirt.id} ${surface.id}`, () => pullRowsOf(setting, test));
}

function pullRowsOf(setting: Setting, test: StoredTest<"pull">): PullRow[] {
  const own = ({ gap }: PullTrial) => gap === null || Math.abs(gap - setting.skirt.data.gap) < SAME_GAP;
  const { direction } = test.data;
  const rigMass = toSI(test.data.rigMass, "mass");
  const trials: Reading<PullTrial>[] = inUse(pullTrials(test.data)).filter(
    (trial) => own(trial) && says(trial),
  );
  const read = trials.every(({ voltage }) => voltage !== null);
  const rig = trials.length > 0 ? rigOf(setting, test, read) : null;
  return trials.map(({ held, letGo, row, voltage }) => {
    const pull = rig && { input: atTerminals(rig, voltage), direction, rigMass, held, letGo };
    return { testId: test.id, row, pull };
  });
}

/** A leak test's flow is the lip's own: what leaks beside it was taped. */
function leakRows(setting: Setting, skirt: PredictInput["skirt"]): (RowOfTest & { leak: CalibrationLeak })[] {
  return testsOf(setting.book, "leak").flatMap((test) => {
    if (!isOn(setting, test.data)) return [];
    const shim = test.data.gap ? toSI(test.data.gap, "length") : setting.skirt.data.gap;
    if (Math.abs(shim - setting.skirt.data.gap) >= SAME_GAP) return [];
    const input = { skirt: taped(skirt), air: weatherOf(test.data) };
    const usable = inUse(leakPoints(test.data)).filter(({ pressure, flow }) => pressure > 0 && flow > 0);
    return usable.map(({ pressure, flow, row }) => ({
      testId: test.id,
      row,
      leak: { input, pressure, flow },
    }));
  });
}

const placeOf = ({ testId, row }: RowOfTest): RowOfTest => ({ testId, row });

/** One order whatever the book's is: page and server list tests differently, and ask the same all the same. */
const byPlace = (a: RowOfTest, b: RowOfTest): number =>
  a.testId === b.testId ? a.row - b.row : a.testId < b.testId ? -1 : 1;

/** Pulls with a skirt on a surface, at its set gap. */
export interface PullsOfPair {
  readonly used: readonly RowOfTest[];
  /** those whose rig the book doesn't know well enough */
  readonly unknown: readonly RowOfTest[];
  /** they are enough to be calibrated by */
  readonly enough: boolean;
}

/** @returns the pulls that a calibration of the pair takes, and those that it can't take */
export function pullsOfPair(book: Book, skirtId: string, surfaceId: string): PullsOfPair {
  const [skirt, surface] = [findById(book.skirts, skirtId), findById(book.surfaces, surfaceId)];
  const rows = skirt && surface ? pullRows({ book, skirt, surface }) : [];
  const used = rows.filter(({ pull }) => pull !== null).map(placeOf);
  const unknown = rows.filter(({ pull }) => pull === null).map(placeOf);
  return { used, unknown, enough: used.length >= LEAST_PULLS };
}

/** What tells gap, friction and pull factor of a pair of skirt and surface, not yet brought together. */
type Told = Omit<BuildCalibration, "answer" | "why">;

function toldFor(setting: Setting, gapUncertainty: number | undefined): Told | null {
  const rows = pullRows(setting);
  const logged = rows.flatMap(({ pull, ...place }) => (pull ? [{ ...placeOf(place), pull }] : []));
  if (logged.length < LEAST_PULLS) return null;
  const used = logged.toSorted(byPlace);
  const read = leakRows(setting, used[0].pull.input.skirt);
  const leaks = read.toSorted(byPlace);
  const prior = {
    gap: gapPrior(setting, gapUncertainty),
    friction: frictionPrior(setting),
    pullFactor: ANY_FACTOR,
  };
  const request = { prior, pulls: used.map(({ pull }) => pull), leaks: leaks.map(({ leak }) => leak) };
  return {
    request,
    prior,
    pulls: used.map(placeOf),
    leaks: leaks.map(placeOf),
    leftOut: rows.filter(({ pull }) => pull === null).map(placeOf),
    pullsTellGap: used.some(({ pull }) => !pull.input.skirt.measuredLeak),
    testIds: [...new Set([...logged, ...read].map(({ testId }) => testId))],
  };
}

/** What a calibration says of the gap without one of its tests. */
export interface Contribution {
  readonly testId: string;
  /** pulls or leak readings of it that took part */
  readonly readings: number;
  /** the gap without that test [m]; the prior where nothing else tells it, null where the rest can't be brought together */
  readonly without: GapMoments | null;
  /** the pull factor without it, where a leak test stands in the gap's place [-]; null elsewhere, and where no other pull tells it */
  readonly factor: GapMoments | null;
}

/**
 * What each test contributed to a calibration: the same once more without it.
 *
 *     one of many: from the places of the whole, weighed anew ({@link gapWithoutEach}); one that tells much, or a leak test: calibrated anew
 *
 * @param calibration - of a build
 * @returns for each of its tests, how many readings, the gap [m] and the pull factor [-] that the others tell
 *
 * Valid and source: as {@link calibrate}
 */
export function contributionsOf(calibration: BuildCalibration): Contribution[] {
  const { request, pulls, leaks, testIds, pullsTellGap } = calibration;
  const groups = testIds.map((id) => pulls.flatMap(({ testId }, i) => (testId === id ? [i] : [])));
  const readingsOf = (id: string) => leaks.filter(({ testId }) => testId === id).length;
  const quick = pullsTellGap ? quickly(request, groups) : [];
  return testIds.map((testId, k) => {
    const ofLeak = readingsOf(testId);
    const others = {
      ...request,
      pulls: request.pulls.filter((_, i) => pulls[i].testId !== testId),
      leaks: (request.leaks ?? []).filter((_, i) => leaks[i].testId !== testId),
    };
    const anew = () => attempt(() => calibratedOnce(others)).answer;
    const without = (ofLeak === 0 ? quick[k] : null) ?? anew()?.gap ?? null;
    const factor = pullsTellGap ? null : (anew()?.pullFactor ?? null);
    return { testId, readings: groups[k].length + ofLeak, without, factor };
  });
}

const withoutEachOnce = remembered(
  ({ request, groups }: { readonly request: CalibrationRequest; readonly groups: readonly number[][] }) =>
    gapWithoutEach(request, groups),
  KEPT,
);

/** From the places of the whole where they serve; nothing where the whole itself can't be brought together. */
function quickly(request: CalibrationRequest, groups: number[][]): readonly (GapMoments | null)[] {
  return answerOrNull(() => withoutEachOnce({ request, groups })) ?? [];
}

function attempt(run: () => Calibration): Pick<BuildCalibration, "answer" | "why"> {
  const made = asProblem(run);
  return "problem" in made ? { answer: null, why: made.problem } : { answer: made.answered, why: null };
}

/**
 * Gap, friction and pull factor that the pull and leak tests of a build's skirt on its surface tell, whatever rotor they were taken with.
 *
 *     prior of the gap: as set, its stated uncertainty (±0.2 mm unless stated) and the roughness allowance's; of friction: tilt tests, else the surface's; of κ: 1 ± 0.10
 *
 * @param book - the whole bench book
 * @param build - a stored build, or one changed by what-if handles
 * @returns the calibration and the rows that it rests on; null on fewer than two pulls at the set gap, or an unknown skirt or surface
 * @throws {OutOfRangeError} on a number in the book that can't be
 */
export function calibrationOf(book: Book, build: CalibratedBuild): BuildCalibration | null {
  return ofPair(book, build, "calibration", () => {
    const told = toldOf(book, build);
    return told && { ...attempt(() => calibratedOnce(told.request)), ...told };
  });
}

const toldOf = (book: Book, build: CalibratedBuild): Told | null => ofPair(book, build, "told", toldFor);

function ofPair<T>(
  book: Book,
  build: CalibratedBuild,
  what: string,
  make: (setting: Setting, gapUncertainty: number | undefined) => T | null,
): T | null {
  const skirt = findById(book.skirts, build.skirt);
  const surface = findById(book.surfaces, build.surface);
  if (!skirt || !surface) return null;
  const gapUncertainty = build.uncertainty["skirt.gap"];
  return oncePerBook(book, `${what} ${skirt.id} ${surface.id} ${gapUncertainty}`, () =>
    make({ book, skirt, surface }, gapUncertainty),
  );
}

/**
 * What a build's calibration is still to be worked out from.
 *
 * @param book - the whole bench book
 * @param build - a stored build, or one changed by what-if handles
 * @returns the request for {@link calibrationNumbers}; null where there is none, or its answer is known already
 * @throws {OutOfRangeError} on a number in the book that can't be
 */
export function calibrationToDo(book: Book, build: CalibratedBuild): CalibrationRequest | null {
  const request = calibrationRequest(book, build);
  return request && !numbersOnce.knows(request) ? request : null;
}

/**
 * What a build's calibration is worked out from.
 *
 * @param book - the whole bench book
 * @param build - a stored build, or one changed by what-if handles
 * @returns the request for {@link calibrationNumbers}; null on fewer than two pulls at the set gap, or an unknown skirt or surface
 * @throws {OutOfRangeError} on a number in the book that can't be
 */
export function calibrationRequest(book: Book, build: CalibratedBuild): CalibrationRequest | null {
  return toldOf(book, build)?.request ?? null;
}

/** Takes numbers that were worked out elsewhere from a request: whoever asks for the same has them at once. */
export function learnCalibration(request: CalibrationRequest, numbers: CalibrationNumbers): void {
  numbersOnce.learn(request, numbers);
}
