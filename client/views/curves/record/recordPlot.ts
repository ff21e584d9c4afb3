import type { RecordEntry } from "../../../../shared/model/api/record.ts";
import { axisOver } from "../../../charts/model/axis.ts";
import type { Bracket, Mark, Plot, Spread } from "../../../charts/model/plot.ts";

/** A reading that a chart can show: measured, and predicted by more than nothing. */
interface Shown extends RecordEntry {
  readonly p50: number;
  readonly measured: NonNullable<RecordEntry["measured"]>;
}

const isShown = (entry: RecordEntry): entry is Shown =>
  entry.measured !== null && entry.p50 !== null && entry.p50 > 0;

/** @returns the readings that the chart shows, in the order of their days */
export const shownEntries = (entries: readonly RecordEntry[]): Shown[] => entries.filter(isShown);

export const keyOf = ({ test, row }: Pick<RecordEntry, "test" | "row">): string => `${test}#${row}`;

const TONE = { pull: "rotor", leak: "leak", speed: "ink", margin: "quiet" } as const;

/** Measured over predicted, reading by reading: what was predicted as whiskers, what was measured as bracket or mark. */
export function recordPlot(entries: readonly RecordEntry[]): Plot {
  const shown = shownEntries(entries);
  const over = (entry: Shown, value: number) => (100 * value) / entry.p50;
  const spreads = shown.map((entry, i): Spread => {
    const { p5, p50, p95 } = entry;
    return {
      key: `predicted ${keyOf(entry)}`,
      at: { x: i + 1, y: 100 },
      y: [over(entry, p5 ?? p50), over(entry, p95 ?? p50)],
    };
  });
  const brackets: Bracket[] = [];
  const marks: Mark[] = [];
  shown.forEach((entry, i) => {
    const { low, high } = entry.measured;
    const common = { key: keyOf(entry), tone: TONE[entry.figure], aside: false } as const;
    if (low === high) marks.push({ ...common, x: i + 1, y: over(entry, low), shape: 0, outlier: false });
    else
      brackets.push({
        ...common,
        along: "y",
        at: i + 1,
        lo: over(entry, low),
        hi: high === null ? null : over(entry, high),
      });
  });
  const ys = [
    ...spreads.flatMap(({ y }) => y ?? []),
    ...brackets.flatMap(({ lo, hi }) => [lo, hi ?? lo]),
    ...marks.map(({ y }) => y),
  ];
  return {
    x: axisOver("reading, in order of its day", [0, shown.length + 1]),
    y: axisOver("measured over predicted, %", ys, [100]),
    levels: [{ key: "predicted", along: "x", at: 100, tone: "needed", style: "dots", label: "predicted" }],
    spreads,
    brackets,
    marks,
  };
}
