import type { RecordEntry, RecordSummary, TrackRecord } from "../../../../shared/model/api/record.ts";
import { formatFixed, formatQuantity } from "../../../../shared/units/format.ts";
import { counted } from "../../../ui/count.ts";
import { sureText } from "../../../ui/uncertaintyWords.ts";
import { capital, listed, percent } from "../curveWords.ts";

/** A band that holds 9 of 10 readings is as wide as it says [-]. */
const WANTED = 0.9;
/** Fewer readings than this say little of a share [-]. Judgement. */
const FEW = 10;
/** 95 % points of the normal distribution [-]. */
const TWO_SIDED = 1.96;

export const FIGURE = { pull: "pulls", leak: "leaks", speed: "speeds", margin: "drives" } as const;

/** @returns readings that lie within the band, of those that can be held against one. */
export function insideOf({ summary }: TrackRecord): { readonly inside: number; readonly count: number } {
  const banded = summary.flatMap(({ inside, count }) => (inside === null ? [] : [{ inside, count }]));
  const sum = (of: (each: { inside: number; count: number }) => number) =>
    banded.reduce((total, each) => total + of(each), 0);
  return { inside: Math.round(sum(({ inside, count }) => inside * count)), count: sum(({ count }) => count) };
}

/** @returns whether so many inside of so many is what a 90 % band leaves to chance */
export function isAsWide(inside: number, count: number): "as wide" | "too narrow" | "too wide" {
  const off = (inside - WANTED * count) / Math.sqrt(WANTED * (1 - WANTED) * count);
  if (Math.abs(off) <= TWO_SIDED) return "as wide";
  return off < 0 ? "too narrow" : "too wide";
}

const VERDICT = {
  "as wide": "about the nine of ten that are right",
  "too narrow": "fewer than the nine of ten that are right: something is less certain than stated",
  "too wide": "more than the nine of ten that are right: what is stated is on the safe side",
} as const;

/** @returns the page's answer */
export function recordSentence(record: TrackRecord): string {
  const { inside, count } = insideOf(record);
  const drives = record.summary.find(({ figure }) => figure === "margin");
  if (count === 0 && !drives)
    return "Nothing to compare yet: log a pull, a leak test, a curve or thrust test with its voltage, or a drive, and its prediction is kept with it.";
  if (count === 0) return driveSentence(drives as RecordSummary);
  const few = count < FEW ? `too few to judge by` : VERDICT[isAsWide(inside, count)];
  return `${inside} of ${counted(count, "reading")} within the predicted band, ${few}.`;
}

const driveSentence = ({ count, held, said }: RecordSummary): string =>
  `${Math.round((held ?? 0) * count)} of ${counted(count, "attitude")} driven held; ${formatFixed((said ?? 0) * count, 1)} were expected to.`;

/** @returns "1.9 % low", "as predicted" below what is worth a word */
function offText(off: number, words: readonly [low: string, high: string]): string | null {
  const tenths = Math.round(Math.abs(off) * 1000);
  return tenths === 0 ? null : `${formatFixed(tenths / 10, 1)}\u202f% ${words[off < 0 ? 0 : 1]}`;
}

/** @returns how far each kind of figure was off, a sentence each */
export function offSentences({ summary }: TrackRecord): string[] {
  return summary.map((line) => {
    const { figure, bias, drift } = line;
    if (figure === "margin") return driveSentence(line);
    const name = capital(FIGURE[figure]);
    if (bias === null) return `${name}: none was measured from both sides.`;
    const moved = drift === null ? null : offText(drift, ["lower", "higher"]);
    const off = offText(bias, ["low", "high"]) ?? "as predicted";
    return `${name} came out ${off} in the median${moved ? `, the later half ${moved} than the earlier` : ""}.`;
  });
}

/** @returns how many were predicted in time, and how the others were */
export function basisSentence({ summary }: TrackRecord): string | null {
  const count = summary.reduce((sum, each) => sum + each.count, 0);
  const inTime = summary.reduce((sum, each) => sum + each.inTime, 0);
  if (count === 0) return null;
  if (inTime === count) return "All were predicted as they were logged.";
  const others = `predicted afterwards by the book without their test, which may know others that came later`;
  return inTime === 0
    ? `All were ${others}. What is logged from now on is predicted as it is logged.`
    : `${inTime} were predicted as they were logged; ${count - inTime} were ${others}.`;
}

const SHOWN = { pull: ["load", 0], leak: ["flow", 2], speed: ["speed", 0] } as const;

/** @returns a figure as the page shows it: "412 g", "0.31 L/s", "24 100 rpm", "1.42 ×" */
export function figureText(figure: RecordEntry["figure"], value: number | null): string {
  if (value === null) return "–";
  if (figure === "margin") return `${formatFixed(value, 2)}\u202f×`;
  const [name, decimals] = SHOWN[figure];
  return formatQuantity(value, name, { decimals });
}

/** @returns "380 to 410 g", "held 380 g and more", "held" */
export function measuredText({ figure, measured, held }: RecordEntry): string {
  if (!measured) return held ? "held" : "gave";
  const low = figureText(figure, measured.low);
  if (measured.high === null) return `${low} and more`;
  return measured.low === measured.high ? low : `${low} to ${figureText(figure, measured.high)}`;
}

/** @returns "398 g, 371 to 428 g", of a drive its chance of holding as well */
export function predictedText({ figure, p5, p50, p95, chance }: RecordEntry): string {
  const band =
    p50 === null
      ? "no suction needed"
      : `${figureText(figure, p50)}, ${figureText(figure, p5)} to ${figureText(figure, p95)}`;
  return chance === null ? band : `${band}; chance of holding ${sureText(chance)}`;
}

/** @returns share inside of each kind of figure: "pulls 92 %, leaks 100 %" */
export function insideText({ summary }: TrackRecord): string {
  const parts = summary.flatMap(({ figure, inside }) =>
    inside === null ? [] : [`${FIGURE[figure]} ${percent(inside)}`],
  );
  return listed(parts);
}
