import { formatQuantity } from "../../units/format.ts";
import { listed } from "./attitudeWords.ts";
import type { Setting } from "./change.ts";
import { marginText, percentText, rpmText, targetText, timeText } from "./figures.ts";
import type { Verdict } from "./verdict.ts";
import type { WayOut } from "./wayOut.ts";

const GAP_DECIMALS = 2;

const massText = (value: number) => formatQuantity(value, "mass", { decimals: 0 });
const gapText = (value: number) => formatQuantity(value, "length", { decimals: GAP_DECIMALS });

/** The value itself: "throttle 84 %", "2 cells in series". */
const VALUES: Readonly<Record<Setting, (value: number) => string>> = {
  throttle: (value) => `throttle ${percentText(value)}`,
  cells: (value) => `${value} ${value === 1 ? "cell" : "cells"} in series`,
  mass: massText,
  gap: (value) => `a gap of ${gapText(value)}`,
};

/** From where on: "from 512 g down", "from throttle 92 % up". */
function fromText({ setting, value }: WayOut): string {
  if (setting === "cells") return `with ${VALUES.cells(value)}`;
  return `from ${VALUES[setting](value)} ${setting === "throttle" ? "up" : "down"}`;
}

const fromWhere = (ways: readonly WayOut[]) => listed(ways.map(fromText), "or");

/** ", with 1.31 ×, less than wanted", where it is only just there. */
function butText({ verdict: { state, least } }: WayOut): string {
  return state === "tight" && least ? `, with ${marginText(least.margin)}, less than wanted` : "";
}

/** Where keeping the limits costs the hold. */
function costText({ setting, value, verdict: { least, reason } }: WayOut): string {
  const so =
    reason.kind === "standing" || !least ? "the rotor stands" : `it falls, with ${marginText(least.margin)}`;
  const none = setting === "throttle" ? "No throttle" : "No count of cells";
  return `${none} does both: with ${VALUES[setting](value)} every limit is kept, and ${so}.`;
}

function pastLimits({ reason }: Verdict, ways: readonly WayOut[]): string[] {
  const [first, ...others] = ways.filter(({ verdict }) => verdict.state !== "falls");
  const time = reason.kind === "winding" ? reason.after : null;
  const short = time === null ? [] : [`Or run it for less than ${timeText(time)} from cold.`];
  if (!first) return [...ways.slice(0, 1).map(costText), ...short];
  const down = `Holds again from ${rpmText(first.speed)} down: ${VALUES[first.setting](first.value)}${butText(first)}.`;
  const also = others.map((way) => `Or ${VALUES[way.setting](way.value)}${butText(way)}.`);
  return [down, ...also, ...short];
}

function towards({ state }: Verdict, ways: readonly WayOut[]): string[] {
  const wanted = Math.max(...ways.map((way) => way.wanted ?? 0));
  const enough = ways.filter((way) => way.wanted === wanted);
  const just = ways.filter((way) => way.wanted !== wanted);
  if (enough.length === 0) return [];
  if (state === "tight") return [`The ${targetText(wanted)} wanted is there ${fromWhere(enough)}.`];
  if (just.length === 0) return [`Holds ${fromWhere(enough)}.`];
  return [`Holds ${fromWhere(just)}; with the ${targetText(wanted)} wanted ${fromWhere(enough)}.`];
}

/**
 * What to do about a verdict, in words.
 *
 *     each way as it was solved; of tests that contradict each other, to repeat one or set it aside
 *
 * @param verdict - from {@link verdictOf}
 * @param ways - from {@link waysOut} or {@link surelyHeldMass}, of the same case
 * @returns sentences; none where it holds [-]
 *
 * Valid for any verdict; shown units are the bench's own
 */
export function wayOutText(verdict: Verdict, ways: readonly WayOut[]): string {
  const { state, reason } = verdict;
  if (state === "holds") return "";
  if (reason.kind === "contradiction") return "Repeat one of them, or set it aside with a reason.";
  if (state === "unsure") return ways[0] ? `Sure ${fromText(ways[0])}.` : "";
  const said = state === "falls" || state === "tight" ? towards(verdict, ways) : pastLimits(verdict, ways);
  return said.join(" ") || "No value of one setting alone works.";
}
