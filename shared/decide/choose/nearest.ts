import { writeTimes } from "./detail.ts";
import { createReading, type Reading, read } from "./judged.ts";
import { IS_LEAST, PLACE } from "./limits.ts";
import type { Prepared } from "./prepare.ts";
import { LIMITS, type Relaxation } from "./result.ts";
import { placeIn, type Results } from "./values.ts";

/** Limits that are found only where they can still decide. */
const LATE = [PLACE.time, PLACE.keptTime];

const BITS = LIMITS.map((_, place) => 1 << place);
const isOneBit = (bits: number): boolean => bits !== 0 && (bits & (bits - 1)) === 0;

/** A housing that is this much short counts as what misses the whole of another limit [m]. Judgement. */
const SHORT_HOUSING = 1e-3;

/** What is missing of one limit, relative to what is allowed; infinite where no number is known. */
function shortOf(place: number, { values, allowed }: Reading): number {
  if (place === PLACE.point) return Number.POSITIVE_INFINITY;
  const short = IS_LEAST[place] ? allowed[place] - values[place] : values[place] - allowed[place];
  const whole = place === PLACE.clearance ? SHORT_HOUSING : Math.abs(allowed[place]) || 1;
  const share = short / whole;
  return Number.isNaN(share) ? Number.POSITIVE_INFINITY : Math.max(0, share);
}

function shortfall(bits: number, reading: Reading): number {
  let sum = 0;
  for (let place = 0; place < BITS.length; place++) if (bits & BITS[place]) sum += shortOf(place, reading);
  return sum;
}

/** How far a question was from being met, limit by limit. */
export interface Tally {
  /** combinations that break no limit */
  readonly meeting: number;
  /** combinations that break each limit, by place of LIMITS; that of time counts the combinations where it decides */
  readonly broken: readonly number[];
  /** combinations that break this limit alone */
  readonly alone: readonly number[];
}

/**
 * Counts what the limits keep out.
 *
 *     combinations by broken limit
 *
 * @param results - solved combinations
 * @returns counts [-]
 *
 * Valid for any results; tallies of parts add up
 */
export function tallyOf(results: Results): Tally {
  const broken = LIMITS.map(() => 0);
  const alone = LIMITS.map(() => 0);
  let meeting = 0;
  for (const chunk of results)
    for (const bits of chunk.broken) {
      if (bits === 0) meeting += 1;
      for (let place = 0; bits >> place !== 0; place++)
        if (bits & BITS[place]) {
          broken[place] += 1;
          if (isOneBit(bits)) alone[place] += 1;
        }
    }
  return { meeting, broken, alone };
}

/**
 * Which limit to relax, and by how much: for each limit alone, the least change that lets a combination in.
 *
 *     among the combinations that break this limit and no other, the one that misses least of it
 *
 * @param prepared - the question
 * @param results - solved combinations
 * @returns one entry for each limit that can be relaxed, in the order of LIMITS [SI]
 *
 * Valid for any results; of equals the first index
 */
export function relaxations(prepared: Prepared, results: Results): Relaxation[] {
  const reading = createReading();
  const best = new Map<number, Relaxation & { readonly share: number }>();
  for (const chunk of results)
    for (let at = 0; at < chunk.count; at++) {
      const bits = chunk.broken[at];
      if (!isOneBit(bits)) continue;
      const place = BITS.indexOf(bits);
      read(prepared, chunk, at, reading);
      const share = shortOf(place, reading);
      if (!(share < (best.get(place)?.share ?? Number.POSITIVE_INFINITY))) continue;
      const [from, to] = [reading.allowed[place], reading.values[place]];
      best.set(place, { limit: LIMITS[place], from, to, index: chunk.from + at, share });
    }
  return LIMITS.flatMap((_, place) => {
    const found = best.get(place);
    return found ? [{ limit: found.limit, from: found.from, to: found.to, index: found.index }] : [];
  });
}

/** A combination that breaks limits, and what is missing in all, relative to what is allowed. */
export interface Near {
  readonly index: number;
  readonly shortfall: number;
}

const byShortfall = (a: Near, b: Near): number => a.shortfall - b.shortfall || a.index - b.index;

/** The `count` combinations that miss least by their stored numbers: what is missing of a time that was not found comes on top. */
function leastMissing(prepared: Prepared, results: Results, count: number): Near[] {
  const reading = createReading();
  let kept: Near[] = [];
  let worst = Number.POSITIVE_INFINITY;
  for (const chunk of results)
    for (let at = 0; at < chunk.count; at++) {
      const bits = chunk.broken[at];
      if (bits === 0 || bits & BITS[PLACE.point]) continue;
      read(prepared, chunk, at, reading);
      const missing = shortfall(bits, reading);
      if (!(missing < worst)) continue;
      kept.push({ index: chunk.from + at, shortfall: missing });
      if (kept.length < 2 * count) continue;
      kept = kept.sort(byShortfall).slice(0, count);
      worst = kept[count - 1].shortfall;
    }
  return kept.sort(byShortfall).slice(0, count);
}

/** Adds what is missing of the times that were not found. */
function withTimes(prepared: Prepared, results: Results, near: Near): Near {
  const { chunk, at } = placeIn(results, near.index);
  const reading = createReading();
  read(prepared, chunk, at, reading);
  const open = LATE.filter(
    (place) => reading.allowed[place] > Number.NEGATIVE_INFINITY && Number.isNaN(reading.values[place]),
  );
  if (open.length === 0) return near;
  writeTimes(prepared, near.index, reading);
  const missing = open.reduce((sum, place) => sum + shortOf(place, reading), 0);
  return { index: near.index, shortfall: near.shortfall + missing };
}

/** Candidates looked at first, for each combination that is asked for. */
const CANDIDATES = 8;

/**
 * The combinations that come nearest to meeting every limit.
 *
 *     Σ over broken limits of |value − allowed|/|allowed|, least first
 *
 * @param prepared - the question
 * @param results - solved combinations
 * @param count - how many [-]
 * @returns indices and what each misses [-], nearest first; of equals the first index; none that does not turn
 *
 * Valid for any results. A time that was not stored is found for as many candidates as it takes to be sure
 */
export function nearestCombinations(prepared: Prepared, results: Results, count: number): Near[] {
  for (let tried = CANDIDATES * count; ; tried *= CANDIDATES) {
    const candidates = leastMissing(prepared, results, tried);
    const timed = candidates.map((near) => withTimes(prepared, results, near)).sort(byShortfall);
    const nearest = timed
      .slice(0, count)
      .filter(({ shortfall: missing }) => missing < Number.POSITIVE_INFINITY);
    const beyond = candidates[candidates.length - 1]?.shortfall ?? Number.POSITIVE_INFINITY;
    const sure = nearest.length === count && nearest[count - 1].shortfall < beyond;
    if (sure || candidates.length < tried) return nearest;
  }
}
