import type { Book } from "../../../../shared/book/book.ts";
import {
  type RunCheck,
  type RunFrom,
  type RunRow,
  runChecks,
  runRows,
} from "../../../../shared/book/runLog.ts";
import type { RunLogTest } from "../../../../shared/model/tests/runLog.ts";
import type { Mode } from "../../../../shared/physics/hold/holdAt.ts";
import { attempt, digits, NOTHING_YET, type RowName, type Running } from "./result.ts";
import { pointSketch, type Sketch } from "./sketch.ts";

const GIVES: Readonly<Record<Mode, string>> = {
  liftOff: "lifts off",
  slide: "slips",
  tip: "tips",
  climb: "can't climb",
};

const FROM: Readonly<Record<RunFrom, string>> = {
  voltage: "",
  charge: "",
  time: " by the time",
  build: " at the build's charge",
};

/** "1.31 ×, slips first" */
function predictedText({ margin, governs, from }: RunCheck): string {
  if (margin === null) return "holds without suction";
  return `${digits(margin)} ×, ${governs.map((mode) => GIVES[mode]).join(", ")} first${FROM[from]}`;
}

const rowText = (check: RunCheck): string =>
  `${check.agrees ? "as predicted" : "not as predicted"}: ${predictedText(check)}`;

/** Margins beyond this are drawn at it: what matters lies about 1 [-]. */
const HIGHEST = 10;

function runSketch(test: RunLogTest, checks: readonly RunCheck[], names: readonly RowName[]): Sketch | null {
  const sketch = pointSketch({
    title: "Margin predicted for each attitude; ringed: it did otherwise",
    row: "attitude",
    x: "inclination, °",
    y: "margin predicted, ×",
    points: runRows(test).map(({ row, angle, setAside }, i) => ({
      ...names[row],
      x: angle,
      y: Math.min(HIGHEST, checks[i].margin ?? HIGHEST),
      aside: setAside,
      outlier: !checks[i].agrees,
    })),
  });
  if (!sketch) return null;
  const { plot } = sketch;
  const holds = { key: "holds", along: "x", at: 1, tone: "needed", style: "dots" } as const;
  const y = { ...plot.y, from: Math.min(0, plot.y.from), to: Math.max(1.2, plot.y.to) };
  return { ...sketch, plot: { ...plot, y, levels: [holds] } };
}

function notesOf(rows: readonly RunRow[], checks: readonly RunCheck[]): string[] {
  const gaveWay = rows.filter((row, i) => row.outcome !== "held" && checks[i].holds).length;
  const heldOn = rows.filter((row, i) => row.outcome === "held" && !checks[i].holds).length;
  return [
    gaveWay > 0
      ? "It gave way where it was predicted to hold: look at the voltage under load, the surface, and what changed since the tests."
      : "",
    heldOn > 0
      ? "It held where it was predicted to give way: the prediction is on the safe side there, or the attitude is off."
      : "",
  ].filter(Boolean);
}

/** What was predicted for each attitude of the drive, and how often it came so. */
export function runRunLog(test: RunLogTest, names: readonly RowName[], book: Book): Running {
  if (!test.build) return { ...NOTHING_YET, next: "Choose the build that was driven." };
  const rows = runRows(test);
  if (rows.length === 0)
    return { ...NOTHING_YET, next: "Type what it did: held, slid, fell or stalled, and where." };
  const { found, next } = attempt(() => runChecks(book, test));
  if (!found?.checks) return { ...NOTHING_YET, next: next ?? found?.missing[0] ?? null };
  const { checks } = found;
  const used = rows.flatMap((row, i) => (row.setAside === null ? [{ row, check: checks[i] }] : []));
  const agreed = used.filter(({ check }) => check.agrees).length;
  return {
    figures: [{ label: "As predicted", text: `${agreed} of ${used.length}` }],
    byRow: new Map(rows.map(({ row }, i) => [names[row].key, rowText(checks[i])])),
    next: null,
    notes: notesOf(
      used.map(({ row }) => row),
      used.map(({ check }) => check),
    ),
    sketch: runSketch(test, checks, names),
  };
}
