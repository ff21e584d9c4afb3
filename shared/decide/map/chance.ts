import { answerOrNull } from "../../numeric/errors.ts";
import { predictAny } from "../../physics/predictAny.ts";
import { worstMargins } from "../uncertainty.ts";
import type { MapAxis, MapQuestion } from "./grid.ts";
import { buildAt, type Place } from "./place.ts";
import type { MapField } from "./solve.ts";
import { type MapUncertain, uncertainAt } from "./uncertainAt.ts";

/** Where on a map the spread of the margin is to be sampled. */
export interface ChanceQuestion extends MapUncertain {
  /** its axes hold the places [SI] */
  readonly question: Pick<MapQuestion, "of" | "x" | "y">;
  /** at each place [-] */
  readonly samples: number;
}

/** The spread of the margin at some places of a map; plain data. */
export interface ChanceNodes {
  readonly x: MapAxis;
  readonly y: MapAxis;
  readonly samples: number;
  /** row by row: ln(margin/nominal margin) of each sample, rising [-]; null where no margin is to be had, or none is needed */
  readonly spreads: readonly (Float64Array | null)[];
}

/** A margin this far off its nominal one, up or down, is as good as none, or as any [-]. */
const FARTHEST = 30;

const ofPlace = ({ question: { of, x, y } }: ChanceQuestion, column: number, row: number): Place => ({
  ...(x.key === "charge" || y.key === "charge" ? {} : { charge: of.charge }),
  [x.key]: x.values[column],
  [y.key]: y.values[row],
});

function spreadAt(asked: ChanceQuestion, place: Place): Float64Array | null {
  const { of, x, y } = asked.question;
  const moved = buildAt(of, place);
  // A measured leak belongs to its own gap, so where the gap is an axis the lip's law stands in its place throughout.
  const isLaw = (x.key === "gap" || y.key === "gap") && "skirt" in moved;
  const build = isLaw ? { ...moved, skirt: { ...moved.skirt, measuredLeak: null } } : moved;
  const { parked, driving } = predictAny(build, []).worst;
  const nominal = Math.min(
    parked.margin ?? Number.POSITIVE_INFINITY,
    driving.margin ?? Number.POSITIVE_INFINITY,
  );
  if (!(nominal > 0 && nominal < Number.POSITIVE_INFINITY)) return null;
  const uncertain = uncertainAt(of, asked, build, place.charge ?? of.charge);
  const margins = worstMargins(build, { ...uncertain, samples: asked.samples });
  return margins.map((margin) => Math.max(-FARTHEST, Math.min(FARTHEST, Math.log(margin / nominal)))).sort();
}

/**
 * Samples the spread of the margin at some places of a map.
 *
 *     ln(mᵢ/m), mᵢ of each sample on its own worst attitude, m of the build as it stands there;  the same samples at every place
 *
 * @param asked - axes of the places, what is uncertain [SI], samples at each [-]
 * @returns spreads by place [-]; null at a place without an answer
 *
 * Valid as {@link uncertaintyOf}. Source: docs/method/map.md, Chance of holding
 */
export function chanceNodes(asked: ChanceQuestion): ChanceNodes {
  const { x, y } = asked.question;
  const spreads = y.values.flatMap((_, row) =>
    x.values.map((_each, column) => answerOrNull(() => spreadAt(asked, ofPlace(asked, column, row)))),
  );
  return { x, y, samples: asked.samples, spreads };
}

/** The step of an axis in which a value lies, and how far along it, 0 to 1. */
function stepAt({ values }: MapAxis, value: number): { readonly from: number; readonly along: number } {
  let from = 0;
  while (from < values.length - 2 && values[from + 1] <= value) from++;
  const along = (value - values[from]) / (values[from + 1] - values[from]);
  return { from, along: Math.min(1, Math.max(0, along)) };
}

interface Weighed {
  readonly spread: Float64Array;
  readonly weight: number;
}

/** The spreads around a place, weighed by how near they are; those without an answer count as their neighbours. */
function around({ x, y, spreads }: ChanceNodes, atX: number, atY: number): Weighed[] {
  const [column, row] = [stepAt(x, atX), stepAt(y, atY)];
  const corners = [0, 1].flatMap((up) =>
    [0, 1].flatMap((right): Weighed[] => {
      const spread = spreads[(row.from + up) * x.values.length + column.from + right];
      const share = (along: number, side: number) => (side === 1 ? along : 1 - along);
      const weight = share(column.along, right) * share(row.along, up);
      return spread && weight > 0 ? [{ spread, weight }] : [];
    }),
  );
  const sum = corners.reduce((total, { weight }) => total + weight, 0);
  return corners.map(({ spread, weight }) => ({ spread, weight: weight / sum }));
}

/** Share of a spread, weighed of several, that lies at or above a threshold; linear between two samples. */
function shareAbove(weighed: readonly Weighed[], count: number, threshold: number): number {
  const at = (i: number) => weighed.reduce((sum, { spread, weight }) => sum + weight * spread[i], 0);
  if (at(0) >= threshold) return 1;
  if (at(count - 1) < threshold) return 0;
  let [below, above] = [0, count - 1];
  while (above - below > 1) {
    const middle = (below + above) >> 1;
    if (at(middle) >= threshold) above = middle;
    else below = middle;
  }
  const [low, high] = [at(below), at(above)];
  return (count - above + (high > low ? (high - threshold) / (high - low) : 0)) / count;
}

/**
 * The chance of holding at a place of a map.
 *
 *     P(m·exp(s) ≥ 1),  the quantiles of s read between the four places around it
 *
 * @param nodes - spreads by place [-]
 * @param x - by the first axis [SI]
 * @param y - by the second axis [SI]
 * @param margin - m, of the build as it stands there [-]
 * @returns chance that every attitude holds, driving and parked [-]; NaN where the margin is
 *
 * Valid for spreads that change little from one place to the next. Source: docs/method/map.md, Chance of holding
 */
export function chanceAt(nodes: ChanceNodes, x: number, y: number, margin: number): number {
  if (Number.isNaN(margin)) return Number.NaN;
  if (margin === Number.POSITIVE_INFINITY) return 1;
  if (margin <= 0) return 0;
  const weighed = around(nodes, x, y);
  if (weighed.length === 0) return margin >= 1 ? 1 : 0;
  return shareAbove(weighed, nodes.samples, -Math.log(margin));
}

/** @returns the chance of holding at every point of a map, row by row as its margins [-] */
export function chanceOver(
  { x, y }: Pick<MapQuestion, "x" | "y">,
  { margin }: Pick<MapField, "margin">,
  nodes: ChanceNodes,
): Float64Array {
  const columns = x.values.length;
  return margin.map((each, i) =>
    chanceAt(nodes, x.values[i % columns], y.values[Math.floor(i / columns)], each),
  );
}
