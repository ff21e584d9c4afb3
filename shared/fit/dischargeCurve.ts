import { NotEnoughDataError } from "../numeric/errors.ts";
import type { Note } from "../physics/note.ts";
import { formatFixed } from "../units/format.ts";
import type { CellReading } from "./dischargeSteps.ts";
import { nonFalling } from "./monotone.ts";

/** Points of an open-circuit curve, by rising charge, from 0 to 1 [-, V]. */
export type CurvePoints = readonly (readonly [number, number])[];

export interface MadeCurve {
  readonly curve: CurvePoints;
  readonly warnings: readonly Note[];
}

/** Points that a curve keeps at most; the monotone cubic goes through each. */
const MOST_POINTS = 60;
/** Readings nearer in charge than this are one point [-]. */
const SAME_CHARGE = 1e-3;
/** Charge at an end that no reading covers, up to which a straight line goes on [-]. Judgement. */
const MOST_GAP = 0.05;
/** Correction of a point from which the clean-up is worth a word [V]. */
const NOTICEABLE = 1e-3;
/** Digits of charge and voltage that are kept [-, V]. */
const DIGITS = 1e-6;

interface Point {
  readonly charge: number;
  readonly voltage: number;
  readonly weight: number;
}

function meanOf(group: readonly Point[]): Point {
  const weight = group.reduce((sum, point) => sum + point.weight, 0);
  const mean = (pick: (point: Point) => number) =>
    group.reduce((sum, point) => sum + point.weight * pick(point), 0) / weight;
  return { charge: mean((point) => point.charge), voltage: mean((point) => point.voltage), weight };
}

/** Readings at one charge become one point. */
function merged(points: readonly Point[]): Point[] {
  const groups: Point[][] = [];
  for (const point of points) {
    const last = groups.at(-1);
    if (last && point.charge - last[0].charge < SAME_CHARGE) last.push(point);
    else groups.push([point]);
  }
  return groups.map(meanOf);
}

/** Many points that rise become few, more of them where the voltage is steep; the first and the last stay as they are. */
function thinned(points: readonly Point[]): Point[] {
  if (points.length <= MOST_POINTS) return [...points];
  const [first, last] = [points[0], points[points.length - 1]];
  const span = last.voltage - first.voltage || 1;
  const along = ({ charge, voltage }: Point) => (charge + (voltage - first.voltage) / span) / 2;
  const groups = new Map<number, Point[]>();
  for (const point of points.slice(1, -1)) {
    const group = Math.floor(along(point) * (MOST_POINTS - 2));
    groups.set(group, [...(groups.get(group) ?? []), point]);
  }
  return [first, ...[...groups.values()].map(meanOf), last];
}

function requireCover(points: readonly Point[]): void {
  const [first, last] = [points[0], points[points.length - 1]];
  if (points.length < 3)
    throw new NotEnoughDataError(
      "Fewer than three charges were read.",
      "Read voltage and current at ten or more charges between full and empty.",
      "runs",
    );
  if (1 - last.charge > MOST_GAP)
    throw new NotEnoughDataError(
      `The first reading is at ${Math.round(100 * last.charge)} % charge.`,
      "Start with the full pack and read its voltage before anything is drawn.",
      "runs",
    );
  if (first.charge > MOST_GAP)
    throw new NotEnoughDataError(
      `The last reading is at ${Math.round(100 * first.charge)} % charge.`,
      "Draw on, attended, until the loaded cell reaches its maker's minimum.",
      "runs",
    );
}

/** The straight line through two points, at a charge. */
function along(a: Point, b: Point, charge: number): number {
  return a.voltage + ((b.voltage - a.voltage) * (charge - a.charge)) / (b.charge - a.charge);
}

function toTheEnds(points: readonly Point[]): Point[] {
  const [first, second] = points;
  const [before, last] = points.slice(-2);
  const empty = first.charge > 0 ? [{ charge: 0, voltage: along(first, second, 0), weight: 1 }] : [];
  const full = last.charge < 1 ? [{ charge: 1, voltage: along(before, last, 1), weight: 1 }] : [];
  return [...empty, ...points, ...full];
}

/** Points with the digits that are kept; of two that these make one charge, the first. */
function written(points: readonly Point[]): CurvePoints {
  const rounded = (value: number) => Math.round(value / DIGITS) * DIGITS;
  return points
    .map(({ charge, voltage }) => [rounded(charge), rounded(voltage)] as const)
    .filter(([charge], i, all) => i === 0 || charge > all[i - 1][0]);
}

function notesOf(gap: number, corrected: number): Note[] {
  const notes: Note[] = [];
  if (gap > SAME_CHARGE) {
    const message = `The last ${formatFixed(100 * gap, 1)} % of charge at an end were not read: the straight line of the nearest points goes on there.`;
    notes.push({ code: "curve-end-extended", message });
  }
  if (corrected > NOTICEABLE) {
    const message = `The readings do not fall all the way: neighbours out of order were averaged, by up to ${(1000 * corrected).toFixed(0)} mV.`;
    notes.push({ code: "curve-made-monotone", message });
  }
  return notes;
}

/**
 * Open-circuit curve from readings whose sag is known.
 *
 *     V_oc(z) = V + R·I, readings at one charge averaged, made non-falling in z, from z = 0 to 1
 *
 * @param readings - of one cell: charge [-], voltage [V], current [A]
 * @param resistance - R of the cell by its charge [Ω]
 * @returns at most 60 points [-, V], notes on what was extended or put in order
 * @throws {NotEnoughDataError} on fewer than three charges, or more than 5 % of charge not read at an end
 *
 * Valid between full and empty as the test had them. Source: Kirchhoff's laws; {@link nonFalling}; docs/method/fits/discharge.md
 */
export function openCircuitPoints(
  readings: readonly CellReading[],
  resistance: (charge: number) => number,
): MadeCurve {
  const corrected = readings
    .map(({ charge, voltage, current }) => ({
      charge,
      voltage: voltage + resistance(charge) * current,
      weight: 1,
    }))
    .sort((a, b) => a.charge - b.charge);
  const points = merged(corrected);
  requireCover(points);
  const gap = Math.max(points[0].charge, 1 - points[points.length - 1].charge);
  const all = toTheEnds(points);
  const rising = nonFalling(all.map(({ voltage, weight }) => ({ value: voltage, weight })));
  const most = all.reduce((sum, { voltage }, i) => Math.max(sum, Math.abs(voltage - rising[i])), 0);
  const ordered = all.map(({ charge, weight }, i) => ({ charge, voltage: rising[i], weight }));
  return { curve: written(thinned(ordered)), warnings: notesOf(gap, most) };
}
