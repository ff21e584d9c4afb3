import { OutOfRangeError, requireNonNegative, requirePositive } from "../../numeric/errors.ts";
import { normalCdf } from "../../numeric/normal.ts";

/** A dimension of a stack: the space between two faces, or a part that takes some of it. */
export interface Dimension {
  /** [m] */
  readonly nominal: number;
  /** half of the range it is made in [m] */
  readonly tolerance: number;
  /** 1: it opens the clearance; −1: it fills it */
  readonly sense: 1 | -1;
  /** pieces one upon the other, each with its own error; 1 unless given [-] */
  readonly quantity?: number;
}

export type StackVerdict = "closes" | "may-not-close" | "will-not-close";

/** What is left between the faces once all parts are in. */
export interface Stack {
  /** nominal [m] */
  readonly clearance: number;
  /** every dimension at its end [m] */
  readonly worstCase: readonly [number, number];
  /** errors that are independent of one another [m] */
  readonly rss: readonly [number, number];
  /** that the clearance is 0 or more [-] */
  readonly chance: number;
  readonly verdict: StackVerdict;
  /** by dimension: half range of its pieces at their ends [m], and its share of the clearance's variance [-] */
  readonly contributions: readonly { readonly worstCase: number; readonly share: number }[];
}

/** Standard deviations in a tolerance [-]. Common practice. */
const SDS_PER_TOLERANCE = 3;
/** What sums of lengths differ by without meaning it, relative to the longest [-]. */
const ROUNDING = 1e-12;

const piecesOf = ({ quantity = 1 }: Dimension): number => quantity;

function check(dimensions: readonly Dimension[]): void {
  dimensions.forEach(({ nominal, tolerance, quantity = 1 }, i) => {
    requirePositive(`dimensions.${i}.nominal`, nominal);
    requireNonNegative(`dimensions.${i}.tolerance`, tolerance);
    if (tolerance > nominal)
      throw new OutOfRangeError(`dimensions.${i}.tolerance`, tolerance, `no more than the size, ${nominal}`);
    if (!(Number.isInteger(quantity) && quantity >= 1))
      throw new OutOfRangeError(`dimensions.${i}.quantity`, quantity, "a whole number, 1 or more");
  });
}

/** An end below 0 in the worst case is an uncertainty; below 0 even with errors that seldom add up, a certainty. */
function verdictOf(
  [worstLow]: readonly [number, number],
  [, rssHigh]: readonly [number, number],
): StackVerdict {
  if (rssHigh < 0) return "will-not-close";
  return worstLow < 0 ? "may-not-close" : "closes";
}

/**
 * Whether parts fit between two faces.
 *
 *     c = Σ s·q·L;  worst case c ± Σ q·t;  RSS c ± √Σ q·t²;  chance Φ(3c/√Σ q·t²)
 *
 * @param dimensions - nominal and tolerance [m], whether it opens or fills the clearance, pieces [-]
 * @returns clearance [m], its limits both ways [m], chance of closing [-], the verdict, what each dimension contributes [m, -]
 * @throws {OutOfRangeError} on a size that is not above 0, a tolerance below 0 or larger than the size, a quantity that is no whole number
 *
 * Valid for dimensions along one line, made independently of one another, each centred in its tolerance, which is three standard deviations.
 * Source: Drake (ed.), Dimensioning and Tolerancing Handbook (1999) ch. 9; docs/method/fit-up.md, Stack
 */
export function stackOf(dimensions: readonly Dimension[]): Stack {
  check(dimensions);
  const sum = (of: (dimension: Dimension) => number) =>
    dimensions.reduce((total, each) => total + of(each), 0);
  const least = ROUNDING * Math.max(...dimensions.map((each) => piecesOf(each) * each.nominal));
  const settled = (length: number) => (Math.abs(length) <= least ? 0 : length);
  const clearance = settled(sum((each) => each.sense * piecesOf(each) * each.nominal));
  const variance = sum((each) => piecesOf(each) * each.tolerance ** 2);
  const within = (half: number): [number, number] => [settled(clearance - half), settled(clearance + half)];
  const worstCase = within(sum((each) => piecesOf(each) * each.tolerance));
  const half = Math.sqrt(variance);
  const rss = within(half);
  return {
    clearance,
    worstCase,
    rss,
    chance: half > 0 ? normalCdf((SDS_PER_TOLERANCE * clearance) / half) : Number(clearance >= 0),
    verdict: verdictOf(worstCase, rss),
    contributions: dimensions.map((each) => ({
      worstCase: piecesOf(each) * each.tolerance,
      share: variance > 0 ? (piecesOf(each) * each.tolerance ** 2) / variance : 0,
    })),
  };
}
