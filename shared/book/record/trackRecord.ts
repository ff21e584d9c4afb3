import {
  FORETOLD_FIGURES,
  FORETOLD_KINDS,
  type Foretold,
  type ForetoldFigure,
  type KeptPrediction,
  type RecordEntry,
  type RecordSummary,
  type TrackRecord,
} from "../../model/api/record.ts";
import type { StoredOf } from "../../model/record.ts";
import type { InlinedTest } from "../../model/tests/index.ts";
import { toSI } from "../../units/quantity.ts";
import type { Book } from "../book.ts";
import { inlined } from "../named.ts";
import { leakPoints } from "../readings/leak.ts";
import { pullTrials } from "../readings/pull.ts";

type Measured = Pick<RecordEntry, "measured" | "held">;

/** What was measured in a row; null where it isn't there any more, or is set aside. */
function measuredIn(test: InlinedTest, row: number): Measured | null {
  if (test.kind === "pull") {
    const trial = pullTrials(test)[row];
    if (!trial || trial.setAside !== null || (trial.held === 0 && trial.letGo === null)) return null;
    return { measured: { low: trial.held, high: trial.letGo }, held: null };
  }
  if (test.kind === "leak") {
    const point = leakPoints(test).find((each) => each.row === row);
    if (!point || point.setAside !== null) return null;
    return { measured: { low: point.flow, high: point.flow }, held: null };
  }
  if (test.kind === "curve" || test.kind === "thrust") {
    const reading = test.rows[row];
    if (!reading || reading.setAside) return null;
    const speed = toSI(reading.speed, "speed");
    return { measured: { low: speed, high: speed }, held: null };
  }
  if (test.kind !== "run-log") return null;
  const part = test.rows[row];
  return !part || part.setAside ? null : { measured: null, held: part.outcome === "held" };
}

function isInside({ p5, p95 }: Foretold, { measured }: Measured): boolean | null {
  if (!measured || p5 === null || p95 === null) return null;
  return measured.low <= p95 && (measured.high === null || measured.high >= p5);
}

function entriesOf(book: Book, test: StoredOf<"tests">, { at, rows }: KeptPrediction): RecordEntry[] {
  const data = inlined(book, test.data) as InlinedTest;
  const { kind, date } = test.data;
  return rows.flatMap((foretold) => {
    const found = measuredIn(data, foretold.row);
    return found
      ? [{ ...foretold, ...found, test: test.id, kind, date, at, inside: isInside(foretold, found) }]
      : [];
  });
}

const mean = (values: readonly number[]): number | null =>
  values.length > 0 ? values.reduce((sum, value) => sum + value, 0) / values.length : null;

function median(values: readonly number[]): number | null {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = Math.floor(sorted.length / 2);
  if (sorted.length === 0) return null;
  return sorted.length % 2 === 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
}

/** Measured over predicted, less 1, of what was measured from both sides: a bracket by the middle of its logarithms. */
export function offOf({ measured, p50 }: Pick<RecordEntry, "measured" | "p50">): number | null {
  if (!measured || measured.high === null || !(measured.low > 0) || !p50) return null;
  return Math.sqrt(measured.low * measured.high) / p50 - 1;
}

/** Fewer readings than this show no drift [-]. */
const FEWEST_OF_A_DRIFT = 6;

function driftOf(offs: readonly number[]): number | null {
  if (offs.length < FEWEST_OF_A_DRIFT) return null;
  const half = Math.floor(offs.length / 2);
  const [earlier, later] = [median(offs.slice(0, half)), median(offs.slice(-half))];
  return earlier === null || later === null ? null : later - earlier;
}

/**
 * Predicted against measured in one line.
 *
 *     inside: share within 5 to 95 %;  bias: median of measured/predicted − 1;  drift: that of the later half less that of the earlier
 *
 * @param figure - of which kind of figure
 * @param entries - in the order of their days
 * @returns shares and ratios [-]; null where nothing says them
 *
 * Valid for entries of one figure. Source: docs/method/record.md
 */
export function summaryOf(figure: ForetoldFigure, entries: readonly RecordEntry[]): RecordSummary {
  const own = entries.filter((entry) => entry.figure === figure);
  const offs = own.flatMap((entry) => offOf(entry) ?? []);
  const inside = own.flatMap((entry) => (entry.inside === null ? [] : [entry.inside ? 1 : 0]));
  const drives = own.filter(({ held, chance }) => held !== null && chance !== null);
  return {
    figure,
    count: own.length,
    inTime: own.filter(({ basis }) => basis === "then").length,
    inside: mean(inside),
    bias: median(offs),
    drift: driftOf(offs),
    said: mean(drives.flatMap(({ chance }) => chance ?? [])),
    held: mean(drives.map(({ held }) => (held ? 1 : 0))),
  };
}

/** @returns tests that something can be predicted for and no prediction was kept of or is owed to, the newest first */
export function unforetold(book: Book, kept: readonly KeptPrediction[], owed: readonly string[]): string[] {
  const known = new Set([...kept.map(({ test }) => test), ...owed]);
  return book.tests
    .filter(({ id, data }) => FORETOLD_KINDS.includes(data.kind) && !known.has(id))
    .sort((a, b) => b.data.date.localeCompare(a.data.date) || b.createdAt.localeCompare(a.createdAt))
    .map(({ id }) => id);
}

/**
 * How far predictions were off, over all builds.
 *
 * @param book - the whole bench book
 * @param kept - predictions kept with its tests
 * @param owed - tests whose prediction is still being worked out
 * @returns each reading beside its prediction, in the order of their days; a line for each kind of figure that there is [N, m³/s, rad/s, -]
 *
 * Valid for readings in use: those set aside, and tests struck out, are left out. Source: docs/method/record.md
 */
export function trackRecordOf(
  book: Book,
  kept: readonly KeptPrediction[],
  owed: readonly string[] = [],
): TrackRecord {
  const byTest = new Map(kept.map((each) => [each.test, each]));
  const entries = book.tests
    .flatMap((test) => {
      const prediction = byTest.get(test.id);
      return prediction ? entriesOf(book, test, prediction) : [];
    })
    .sort((a, b) => a.date.localeCompare(b.date) || a.at.localeCompare(b.at) || a.row - b.row);
  const summary = FORETOLD_FIGURES.map((figure) => summaryOf(figure, entries)).filter(
    ({ count }) => count > 0,
  );
  return { entries, summary, missing: unforetold(book, kept, owed).length, owed: owed.length };
}
