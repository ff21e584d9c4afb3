import { figureSpread } from "../../decide/figureSpread.ts";
import type { Uncertainties } from "../../decide/uncertainInput.ts";
import type { Foretold } from "../../model/api/record.ts";
import type { StoredOf } from "../../model/record.ts";
import type { LeakTest } from "../../model/tests/leak.ts";
import { leakFlow } from "../../physics/restriction/leak.ts";
import { type SkirtInput, skirtLeak, taped } from "../../physics/skirt.ts";
import { toSI } from "../../units/quantity.ts";
import { type Book, findById } from "../book.ts";
import { calibrationOf } from "../calibration.ts";
import { type GapBasis, gapBasis } from "../gapBasis.ts";
import { type LeakBasis, leakBasis } from "../leakBasis.ts";
import { leakPoints } from "../readings/leak.ts";
import { airOfDay, inUse } from "../readings/reading.ts";
import { surfaceRoughness } from "../roughnessBasis.ts";
import { skirtInput } from "../skirtInput.ts";
import { LIP_LAW } from "../uncertainty/lipLaw.ts";
import { leakCovariance, setAnewBy } from "../uncertainty/skirtUncertainty.ts";
import { withScatter } from "./readingScatter.ts";

type Row = Omit<Foretold, "basis">;

/** A gap that nobody stated an uncertainty of: printed parts to ±0.2 mm unless measured [m]. Common practice, no source. */
const PRINTED = 2e-4;
/** Of one reading of a flow, its meter's gain and its scatter together [-]. Common practice, no source. */
const READING = 0.035;

interface Question {
  readonly skirt: SkirtInput;
  readonly asked: Uncertainties;
}

/** Told by leak tests before at that gap: their fit, and how well a gap comes back. */
function asTested(basis: LeakBasis): Uncertainties {
  const by = setAnewBy(basis) * (4 * basis.leak.exponent - 1);
  const paths = ["skirt.measuredLeak.coefficient", "skirt.measuredLeak.exponent"];
  return {
    uncertainty: {},
    correlated: [{ paths, covariance: leakCovariance(basis) }],
    shared: [
      { name: "set anew", effects: [{ path: "skirt.measuredLeak.coefficient", by, onLogarithm: true }] },
    ],
  };
}

/** By the lip's law at the gap as set, measured or told by pulls. */
function byLaw(skirt: SkirtInput, gap: GapBasis, roughness: number | null): Uncertainties {
  const uncertainty = {
    gap: gap.uncertainty ?? PRINTED,
    roughness: gap.basis === "calibrated" ? 0 : (roughness ?? 0),
    lossSum: LIP_LAW * (skirt.lossSum ?? 0),
    ...(skirt.land > 0 ? { landFriction: LIP_LAW } : {}),
  };
  const known = Object.entries(uncertainty).filter(([, sd]) => sd > 0);
  return { uncertainty: Object.fromEntries(known.map(([name, sd]) => [`skirt.${name}`, sd])) };
}

function questionOf(book: Book, test: LeakTest, skirt: StoredOf<"skirts">): Question | null {
  const surface = findById(book.surfaces, test.surface);
  if (!surface) return null;
  const shim = test.gap && toSI(test.gap, "length");
  const build = { skirt: test.skirt, surface: test.surface, uncertainty: {} };
  const calibration = calibrationOf(book, build);
  const overrides = shim === undefined ? {} : { gap: shim };
  const gap = gapBasis({ overrides, uncertainty: {} }, skirt, calibration);
  const roughness = surfaceRoughness(book, surface);
  const basis = leakBasis(book, test.skirt, test.surface, gap);
  const input = taped(skirtInput(skirt, roughness.value, gap.value, basis?.leak ?? null));
  return { skirt: input, asked: basis ? asTested(basis) : byLaw(input, gap, roughness.sd) };
}

/** The reading in the middle stands for the test: all of them hang on one gap. */
function middleOf(points: ReturnType<typeof leakPoints>, wanted: ReadonlySet<number>) {
  const usable = inUse(points).filter(
    ({ pressure, flow, row }) => pressure > 0 && flow > 0 && wanted.has(row),
  );
  return usable.sort((a, b) => a.pressure - b.pressure)[Math.floor(usable.length / 2)];
}

/**
 * What the book as it is predicts for a leak test, at the reading in the middle of its pressures.
 *
 *     by leak tests before at that gap, else by the lip's law
 *
 * @param book - without the test
 * @param test - the leak test
 * @param wanted - its rows in question [-]
 * @returns 5, 50 and 95 % of the flow [m³/s]; nothing where the book doesn't know the skirt, or no row says a flow
 * @throws {OutOfRangeError} on a number in the book that can't be
 */
export function foretellLeak(book: Book, test: LeakTest, wanted: ReadonlySet<number>): Row[] {
  const skirt = findById(book.skirts, test.skirt);
  const middle = middleOf(leakPoints(test), wanted);
  const question = skirt && middle && questionOf(book, test, skirt);
  if (!question || !middle) return [];
  const air = airOfDay(test.air);
  const band = figureSpread(
    { skirt: question.skirt },
    question.asked,
    (copy) => () => leakFlow(skirtLeak(copy.skirt, air), air, middle.pressure),
  );
  return [{ row: middle.row, figure: "leak", ...withScatter(band, READING), chance: null }];
}
