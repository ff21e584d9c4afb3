import { type Information, varianceAt, withReadings } from "./information.ts";

export interface MissingReadings {
  /** how many more */
  readonly count: number;
  /** where they serve nearly as well as at the best place [unit of x] */
  readonly from: number;
  readonly to: number;
  readonly best: number;
  /** largest band after over largest band now, 0…1 */
  readonly shrinks: number;
  /** where the band is widest now */
  readonly widest: number;
}

export interface MissingQuestion {
  readonly inverse: Information;
  /** design row at x */
  readonly row: (x: number) => readonly number[];
  /** degrees of freedom now */
  readonly dof: number;
  /** that one more reading at x would have */
  readonly weight: (x: number) => number;
  /** where the curve is used, and so where the band counts */
  readonly from: number;
  readonly to: number;
  /** Student's t for the band, by degrees of freedom */
  readonly quantile: (dof: number) => number;
}

const PLACES = 81;
const MOST_READINGS = 6;
/** Few readings that do this much are asked for at once. */
const HALF = 0.5;
/** A place counts as good as the best when its band is at most this much wider. */
const NEARLY = 1.08;
/** A band that so many more readings shrink by less than this is not worth the asking. */
const WORTHWHILE = 0.95;

const placesOf = ({ from, to }: { from: number; to: number }) =>
  Array.from({ length: PLACES }, (_, i) => from + ((to - from) * i) / (PLACES - 1));

/** A place to read at, made once: each is looked at from every other, for every count. */
interface Place {
  readonly row: readonly number[];
  readonly weight: number;
}

/** Largest half-width of the mean's band over the places, and at which; relative to one reading's sd. */
function widestBand(
  inverse: Information,
  places: readonly Place[],
  t: number,
): { place: number; width: number } {
  let widest = { place: 0, width: 0 };
  for (const [place, { row }] of places.entries()) {
    const width = t * Math.sqrt(varianceAt(inverse, row));
    if (width > widest.width) widest = { place, width };
  }
  return widest;
}

function tryCount(question: MissingQuestion, places: readonly Place[], count: number): number[] {
  const t = question.quantile(question.dof + count);
  return places.map(
    ({ row, weight }) => widestBand(withReadings(question.inverse, row, count * weight), places, t).width,
  );
}

/** The unbroken stretch round the best place where more readings serve nearly as well. */
function stretch(widths: readonly number[], best: number): [number, number] {
  const good = (i: number) => i >= 0 && i < widths.length && widths[i] <= widths[best] * NEARLY;
  let first = best;
  let last = best;
  while (good(first - 1)) first -= 1;
  while (good(last + 1)) last += 1;
  return [first, last];
}

/**
 * Which few readings would shrink the largest band of a fitted curve most.
 *
 *     each place is tried with 1, 2 … 6 readings of the usual weight, the scatter taken as it is: max over the range of t·√(xᵀA′x) against that of now
 *
 * @param question - information of the fit, its design rows, degrees of freedom, weights and range [-]
 * @returns the least number that halves the band, else two readings and what they do [unit of x]; null where they do next to nothing
 *
 * Valid for linear models and those linearised at their answer. Source: {@link withReadings}; the widest band is the G-criterion of Kiefer & Wolfowitz, Canad. J. Math. 12 (1960) 363–366
 */
export function missingReadings(question: MissingQuestion): MissingReadings | null {
  const at = placesOf(question);
  const places = at.map((x) => ({ row: question.row(x), weight: question.weight(x) }));
  const now = widestBand(question.inverse, places, question.quantile(question.dof));
  if (!(now.width > 0)) return null;
  const answers = Array.from({ length: MOST_READINGS }, (_, i) => {
    const widths = tryCount(question, places, i + 1);
    const best = widths.indexOf(Math.min(...widths));
    const [first, last] = stretch(widths, best);
    return {
      count: i + 1,
      from: at[first],
      to: at[last],
      best: at[best],
      shrinks: widths[best] / now.width,
      widest: at[now.place],
    };
  });
  const chosen = answers.find((answer) => answer.shrinks <= HALF) ?? answers[1];
  return chosen.shrinks <= WORTHWHILE ? chosen : null;
}
