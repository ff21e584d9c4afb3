import type { SizeRow } from "../../decide/size/row.ts";
import { keepsLimits } from "../../decide/size/size.ts";
import type { SizeSpread } from "../../decide/size/spread.ts";
import type { Quantiles } from "../../decide/spread.ts";
import type { Build } from "../../model/build.ts";
import { answerOrNull } from "../../numeric/errors.ts";
import { findRoot } from "../../numeric/root.ts";
import { type AnyPredictInput, isPropeller, predictAny } from "../../physics/predictAny.ts";
import { type Book, findById } from "../book.ts";
import { withMass } from "../mass/withMass.ts";
import { plannedCurve } from "../nextTest/curve.ts";
import type { Asked, Planned, SpeedPlan } from "../nextTest/planned.ts";
import { plannedThrust, THRUST_SPEEDS } from "../nextTest/thrust.ts";
import { propellerBasis } from "../propellerBasis.ts";
import { resolveBuild, solvable } from "../resolve.ts";
import { rotorBasis } from "../rotorBasis.ts";
import { isSameSize } from "../testedSizes.ts";
import { type FamilyAsked, familySpread } from "./familySpread.ts";

/** A size worth printing and testing, and what that would do. */
export interface Print {
  /** [m] */
  readonly diameter: number;
  /** throttles of the build's own motor at which to take the readings, of a propeller those between which they lie [-] */
  readonly throttles: readonly number[];
  /** the size was tested already: it lies in a drawer */
  readonly isTested: boolean;
  /** part of what the curve leaves uncertain of the best sizes' watts that it would take away [-] */
  readonly cut: number;
}

export interface PrintSeries {
  /** watts of the best sizes that the curve alone leaves uncertain, half of their 5 to 95 % [-]; null where nothing is uncertain */
  readonly known: number | null;
  /** greatest cut first, five at most */
  readonly prints: readonly Print[];
  /** part that the first three would take away together; null for fewer [-] */
  readonly together: number | null;
}

/** What the sizes of a series are looked for among. */
export interface SeriesAsked extends Omit<FamilyAsked, "diameters" | "keeps" | "curveAlone"> {
  /** the family's sizes as they were worked out, by rising diameter */
  readonly rows: readonly SizeRow[];
  /** between which the best size lies [m] */
  readonly best: Quantiles;
}

/** Sizes kept, and told together; samples of each. */
const [KEPT, TOGETHER, SAMPLES] = [5, 3, 256];
/** A cut below this is not worth a print [-]. Judgement. */
const LEAST_CUT = 0.01;
/** The lower speed of a test, over that which the duty asks for [-]: two speeds tell what of a curve hangs on Reynolds number. Judgement. */
const SLOWER = 0.75;
/** Least throttle at which a rotor is sure to start. Judgement. */
const LEAST_THROTTLE = 0.1;

/** The rows nearest to some diameters, each once. */
function rowsNear(rows: readonly SizeRow[], diameters: readonly (number | null)[]): SizeRow[] {
  const nearest = (diameter: number) =>
    rows.reduce((a, b) => (Math.abs(b.diameter - diameter) < Math.abs(a.diameter - diameter) ? b : a));
  return [...new Set(diameters.flatMap((diameter) => (diameter === null ? [] : [nearest(diameter)])))];
}

/** Where the best size may lie, and the ends of those that keep every limit. */
function sizesToTry(rows: readonly SizeRow[], { p5, p50, p95 }: Quantiles): SizeRow[] {
  const kept = rows.filter(keepsLimits);
  const ends = kept.length > 1 ? kept : rows;
  return rowsNear(rows, [p50, p5, p95, ends[0].diameter, ends[ends.length - 1].diameter]);
}

/** Throttle at which a build's rotor turns at a share of its full speed; 1 where less isn't found. */
function throttleFor(input: AnyPredictInput, share: number): number {
  if (!(share < 1)) return 1;
  const speedAt = (duty: number) =>
    predictAny({ ...input, supply: { ...input.supply, duty } }, []).point?.speed ?? 0;
  const target = share * speedAt(1);
  return answerOrNull(() => findRoot((duty) => speedAt(duty) - target, LEAST_THROTTLE, 1).root) ?? 1;
}

/** How a size is tested: at which speeds, of that which the duty asks for, and of which of them the throttle is told [-]. */
interface Taken {
  readonly plan: (asked: Asked, of: SpeedPlan) => Planned | null;
  readonly speeds: readonly number[];
  readonly told: readonly number[];
}

const IN_A_DUCT: Taken = { plan: plannedCurve, speeds: [1, SLOWER], told: [1, SLOWER] };
const OF_A_PROPELLER: Taken = {
  plan: plannedThrust,
  speeds: THRUST_SPEEDS,
  told: [Math.max(...THRUST_SPEEDS), Math.min(...THRUST_SPEEDS)],
};

/** The book with a size tested, and the throttles that takes. */
interface Tested {
  readonly book: Book;
  readonly throttles: readonly number[];
}

function testedAt(book: Book, { side, family }: SeriesAsked, row: SizeRow): Tested | null {
  const base = withMass(book, { ...side.build, rotor: family });
  const build: Build = { ...base, diameter: row.diameter, supply: { ...base.supply, duty: 1 } };
  const resolved = resolveBuild(book, build);
  const input = solvable(resolved);
  const full = input && predictAny(input, []).point;
  if (!full || row.speed === null) return null;
  const share = Math.min(1, row.speed / full.speed);
  const { plan, speeds, told } = isPropeller(input) ? OF_A_PROPELLER : IN_A_DUCT;
  const of = { speeds: speeds.map((each) => each * share), name: `at-${row.diameter}` };
  const planned = plan({ book, build, resolved }, of);
  return planned && { book: planned.book, throttles: told.map((each) => throttleFor(input, each * share)) };
}

function testedBefore(book: Book, family: string): readonly number[] {
  const isOpen = findById(book.rotors, family)?.data.kind === "propeller";
  const tested = isOpen ? propellerBasis(book, family) : rotorBasis(book, family);
  return tested.basis === "missing" ? [] : tested.testedDiameters;
}

/** Mean over the best sizes of half the 5 to 95 % of their watts [-]; null where too few samples have a winding. */
function halfWidth(spread: SizeSpread | null): number | null {
  const widths = spread?.rows.map(({ packPower }) =>
    packPower && packPower.p5 !== null && packPower.p95 !== null ? packPower.p95 - packPower.p5 : Number.NaN,
  );
  if (!widths) return null;
  const mean = widths.reduce((sum, width) => sum + width, 0) / widths.length / 2;
  return Number.isFinite(mean) ? mean : null;
}

/**
 * The sizes of a family that are most worth printing and testing next.
 *
 *     each candidate is printed and its curve taken at two throttles, {@link plannedCurve}, of a propeller its thrust and torque over its speeds, {@link plannedThrust}, as if it read what is now held true; cut = 1 − width after/width before of the watts at the 5, 50 and 95 % of the best size, the curve and its size law alone uncertain
 *
 * @param asked - book, side, family, need, the sizes as they were worked out and the best of them [m]
 * @returns what the curve leaves uncertain now [-], and the sizes with what each would take away, greatest first [-]
 * @throws {OutOfRangeError} {NotEnoughDataError} as {@link familySpread}
 *
 * Valid for tests that read what is expected. Source: preposterior analysis; docs/method/size.md
 */
export function printSeries(asked: SeriesAsked): PrintSeries {
  const { rows, family, best } = asked;
  const none = { known: null, prints: [], together: null };
  if (rows.length === 0) return none;
  const diameters = rowsNear(rows, [best.p5, best.p50, best.p95]).map(({ diameter }) => diameter);
  const keeps = diameters.map(() => true);
  const widthWith = (book: Book) =>
    halfWidth(familySpread({ ...asked, book, diameters, keeps, samples: SAMPLES, curveAlone: true }));
  const known = widthWith(asked.book);
  if (known === null || !(known > 0)) return none;
  const cutWith = (book: Book) => {
    const left = answerOrNull(() => widthWith(book));
    return left === null ? null : 1 - left / known;
  };
  const before = testedBefore(asked.book, family);
  const prints = sizesToTry(rows, best).flatMap((row): Print[] => {
    const plan = answerOrNull(() => testedAt(asked.book, asked, row));
    const cut = plan && cutWith(plan.book);
    if (!plan || cut === null || cut < LEAST_CUT) return [];
    const isTested = before.some((each) => isSameSize(each, row.diameter));
    return [{ diameter: row.diameter, throttles: plan.throttles, isTested, cut }];
  });
  const first = prints.sort((a, b) => b.cut - a.cut).slice(0, KEPT);
  return { known, prints: first, together: togetherOf(asked, first.slice(0, TOGETHER), cutWith) };
}

/** What three prints would take away together. */
function togetherOf(
  asked: SeriesAsked,
  three: readonly Print[],
  cutWith: (book: Book) => number | null,
): number | null {
  if (three.length < TOGETHER) return null;
  const whole = three.reduce<Book | null>((book, { diameter }) => {
    const row = asked.rows.find((each) => each.diameter === diameter);
    return book && row ? (answerOrNull(() => testedAt(book, asked, row))?.book ?? null) : null;
  }, asked.book);
  return whole && cutWith(whole);
}
