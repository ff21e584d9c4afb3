import { chunkOver } from "../../shared/decide/choose/columns.ts";
import { detailOf } from "../../shared/decide/choose/detail.ts";
import { contestOf, foremostCombinations, nonDominated } from "../../shared/decide/choose/front.ts";
import { nearestCombinations, relaxations, tallyOf } from "../../shared/decide/choose/nearest.ts";
import type { Prepared } from "../../shared/decide/choose/prepare.ts";
import { rankedAll, rankedPage } from "../../shared/decide/choose/rank.ts";
import { type Combination, LIMITS, type Objective } from "../../shared/decide/choose/result.ts";
import { columnAt, meetingCombinations, placeIn, type Results } from "../../shared/decide/choose/values.ts";
import type { CombinationsQuery, PointsQuery } from "../../shared/model/api/choose.ts";
import { jsonBytes } from "../routes/jsonBytes.ts";
import { columnsOf, type Solved, type SolvedPiece } from "./piece.ts";
import { opened, type SealedQuestion, shared } from "./question.ts";

/** What came out of a question, ready to be looked through in a thread. */
interface Outcome {
  readonly prepared: Prepared;
  readonly results: Results;
  /** rising */
  readonly front: Uint32Array;
}

export const outcomeOf = ({ question, pieces, front }: Solved): Outcome => ({
  prepared: opened(question).prepared,
  results: columnsOf(pieces),
  front,
});

/** Behind this row the whole order is worked out once and kept. */
const DEEP = 2000;

/** The whole order of a ranking, in memory that all threads share. */
export interface Order {
  readonly by: string;
  readonly indices: Uint32Array;
}

/** What a page is asked of: the combinations, and the order that an earlier page was taken from. */
export interface PageAsked {
  readonly solved: Solved;
  readonly query: CombinationsQuery;
  readonly order: Order | null;
}

/** A page of combinations, best first; how many there are in all; the whole order where it was worked out. */
export interface Page {
  readonly total: number;
  readonly indices: Uint32Array;
  readonly order: Order | null;
}

function everyOf({ results, front }: Outcome, only: CombinationsQuery["only"]): Uint32Array | undefined {
  if (only === "all") return undefined;
  return only === "front" ? front : meetingCombinations(results);
}

/** @returns the combinations that a page is taken from, those of propellers behind the others; undefined: every combination */
function amongOf(outcome: Outcome, { only, kind }: Pick<CombinationsQuery, "only" | "kind">) {
  const every = everyOf(outcome, only);
  if (kind === "any") return every;
  const { radix, count } = outcome.prepared;
  const { combinations } = radix.ducted;
  const all = every ?? Uint32Array.from({ length: count }, (_, index) => index);
  return all.filter((index) => index >= combinations === (kind === "open"));
}

function orderOf(outcome: Outcome, by: Objective, key: string, among?: Uint32Array): Order {
  const ranked = rankedAll(outcome.prepared, outcome.results, by, among);
  const memory = shared(new Uint8Array(ranked.buffer, ranked.byteOffset, ranked.byteLength));
  return { by: key, indices: new Uint32Array(memory) };
}

/** @returns indices of a page of combinations, best first */
export function pageOf({ solved, query, order }: PageAsked): Page {
  const { sort, order: want, only, kind, from, limit } = query;
  const key = `${sort} ${want} ${only} ${kind}`;
  if (order?.by === key) {
    const { indices } = order;
    return { total: indices.length, indices: indices.slice(from, from + limit), order };
  }
  const outcome = outcomeOf(solved);
  const among = amongOf(outcome, query);
  const total = among?.length ?? solved.question.count;
  const by: Objective = { column: sort, want };
  if (from + limit <= DEEP) {
    const page = { skip: from, count: limit };
    return { total, indices: rankedPage(outcome.prepared, outcome.results, by, page, among), order };
  }
  const whole = orderOf(outcome, by, key, among);
  return { total, indices: whole.indices.slice(from, from + limit), order: whole };
}

/** A combination as the API says it: without its places in the lists, which only the engine knows. */
export type PlainCombination = Omit<Combination, "places"> & { readonly onFront: boolean };

/** @returns one combination in full, its time found whatever limits it breaks */
export function combinationOf({ prepared, results, front }: Outcome, index: number): PlainCombination {
  const { places: _inLists, ...combination } = detailOf(prepared, results, index);
  return { ...combination, onFront: front.includes(index) };
}

/** @returns the combinations of a page in full */
export function combinationsOf(asked: PageAsked): {
  readonly page: Page;
  readonly combinations: readonly PlainCombination[];
} {
  const page = pageOf(asked);
  const outcome = outcomeOf(asked.solved);
  return { page, combinations: Array.from(page.indices, (index) => combinationOf(outcome, index)) };
}

/** @returns one combination in full, as bytes of JSON @throws {OutOfRangeError} on an index that no combination has */
export const combinationText = ({
  solved,
  index,
}: {
  readonly solved: Solved;
  readonly index: number;
}): Uint8Array => jsonBytes(combinationOf(outcomeOf(solved), index));

/** The golden section of 1: its multiples fall evenly, and never in step with the order of the combinations. */
const GOLDEN = 0.6180339887498949;

/** @returns places of about `limit` of `count` things, spread evenly; all of them where there are no more */
function spread(count: number, limit: number): number[] {
  if (count <= limit) return Array.from({ length: count }, (_, i) => i);
  return Array.from({ length: limit }, (_, i) => Math.floor(((i * GOLDEN) % 1) * count));
}

const ADMISSIBLE = 1;
const ON_FRONT = 2;
const OPEN = 4;

/** Columns of which more is wanted; of all others less. */
const MOST_WANTED = new Set(["margin", "parked", "driving", "time", "keptTime", "rotorFactor", "suction"]);
const wanted = (column: Objective["column"]): Objective => ({
  column,
  want: MOST_WANTED.has(column) ? "most" : "least",
});

/** @returns combinations to show: the front whole, of those that meet the limits and of all as many as there is room for */
function shownIndices(count: number, meeting: Uint32Array, front: Uint32Array, limit: number): Uint32Array {
  const some = spread(meeting.length, limit / 2).map((place) => meeting[place]);
  return Uint32Array.from(new Set([...spread(count, limit / 2), ...some, ...front]));
}

/** @returns points of a plot, as bytes of JSON: index, x, y, and what they are; those that none dominates in the two are all there */
export function pointsText({ solved, query }: { readonly solved: Solved; readonly query: PointsQuery }) {
  const { x, y, limit } = query;
  const { count } = solved.question;
  const { prepared, results } = outcomeOf(solved);
  const meeting = meetingCombinations(results);
  const { keys, among } = contestOf(prepared, results, [wanted(x), wanted(y)], meeting);
  const front = nonDominated(keys, among);
  const indices = shownIndices(count, meeting, front, limit);
  const [across, up] = [x, y].map((column) => columnAt(prepared, results, column, indices));
  const onFront = new Set(front);
  const points = Array.from(indices, (index, i) => {
    const { chunk, at } = placeIn(results, index);
    const open = index >= prepared.radix.ducted.combinations ? OPEN : 0;
    const kind = (chunk.broken[at] === 0 ? ADMISSIBLE : 0) + (onFront.has(index) ? ON_FRONT : 0) + open;
    return [index, across[i], up[i], kind] as const;
  });
  const isShown = (value: number) => Number.isFinite(value);
  return jsonBytes({
    total: count,
    points: points.filter(([, left, high]) => isShown(left) && isShown(high)),
  });
}

/** Combinations reported of the pieces that came back since the last time. */
const REPORTED = 5;

/** Pieces of a question that came back. */
export interface PiecesBack {
  readonly question: SealedQuestion;
  readonly pieces: readonly SolvedPiece[];
}

/** @returns the combinations of most margin among those of the pieces that meet every limit, to be shown while the rest is solved */
export function bestOf({ question, pieces }: PiecesBack): Omit<PlainCombination, "onFront">[] {
  const { prepared } = opened(question);
  const found = pieces.flatMap(({ from, count, columns }) => {
    const piece = chunkOver(from, count, columns);
    const indices = foremostCombinations([piece]);
    const margins = columnAt(prepared, [piece], "margin", indices);
    return Array.from(indices, (index, i) => ({ piece, index, margin: margins[i] }));
  });
  const best = found.sort((a, b) => b.margin - a.margin || a.index - b.index).slice(0, REPORTED);
  return best.map(({ piece, index }) => {
    const { places: _inLists, ...combination } = detailOf(prepared, [piece], index);
    return combination;
  });
}

/** Combinations told as nearest where no combination, or hardly one, meets the limits. */
const NEAREST = 10;

/** @returns how many combinations each limit keeps out, the least change of each alone that lets a combination in, and the nearest combinations; as bytes of JSON */
export function missedText(solved: Solved): Uint8Array {
  const outcome = outcomeOf(solved);
  const { prepared, results } = outcome;
  const { meeting, broken, alone } = tallyOf(results);
  return jsonBytes({
    admissible: meeting,
    limits: LIMITS.map((limit, place) => ({ limit, broken: broken[place], alone: alone[place] })),
    relaxations: relaxations(prepared, results),
    nearest: nearestCombinations(prepared, results, NEAREST).map(({ index, shortfall }) => ({
      shortfall,
      set: combinationOf(outcome, index),
    })),
  });
}
