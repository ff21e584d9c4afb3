import { leakPoints } from "../../../../shared/book/readings/leak.ts";
import { inUse } from "../../../../shared/book/readings/reading.ts";
import { fitLeak } from "../../../../shared/fit/leakFit.ts";
import type { LeakTest } from "../../../../shared/model/tests/leak.ts";
import { formatQuantity } from "../../../../shared/units/format.ts";
import {
  attempt,
  digits,
  type Figure,
  NOTHING_YET,
  type RowName,
  type Running,
  withError,
} from "./result.ts";
import { leakSketch } from "./sketches.ts";

/** [Pa] */
const SHOWN_AT = 100;

function figuresOf(coefficient: number, exponent: number, error: number | null): Figure[] {
  const flow = coefficient * SHOWN_AT ** exponent;
  return [
    { label: "C", text: `${digits(coefficient * 1e3)} L/(s·Pa^x)` },
    { label: "x", text: withError(exponent, error) },
    { label: `Leak at ${formatQuantity(SHOWN_AT, "pressure")}`, text: formatQuantity(flow, "flow") },
  ];
}

/** Flow of each row, C and x so far. */
export function runLeak(test: LeakTest, names: readonly RowName[]): Running {
  if (test.rows.length === 0) return { ...NOTHING_YET, next: "Type a first point." };
  const read = attempt(() => leakPoints(test));
  if (!read.found) return { ...NOTHING_YET, next: read.next };
  const points = read.found;
  const byRow = new Map(points.map((point) => [names[point.row].key, formatQuantity(point.flow, "flow")]));
  const { found: fit, next } = attempt(() => fitLeak({ points: inUse(points) }));
  return {
    figures: fit ? figuresOf(fit.coefficient, fit.exponent, fit.standardErrors.exponent) : [],
    byRow,
    next,
    notes: fit?.warnings.map((warning) => warning.message) ?? [],
    sketch: leakSketch(points, fit, names),
  };
}
