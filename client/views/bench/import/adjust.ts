import { headOf } from "../../../../shared/units/number.ts";
import { type ClockTime, readClock } from "./clock.ts";
import type { ColumnMapping } from "./mapping.ts";

/** Taken off each reading: what the first of its test was. */
export const FIRST = "first";

/** What is done to a column's readings, in the file's unit: (reading − minus) × times. */
export interface Adjustment {
  readonly times: number;
  /** 0 where nothing is taken off */
  readonly minus: number | ClockTime | typeof FIRST;
}

/** @returns a factor as typed, "-1", "1/7", "/7", "0.25"; null where it is none */
function readTimes(text: string): number | null {
  const typed = text.trim().replace(/^[×*]\s*/, "");
  const under = /^[/÷]\s*(.+)$/.exec(typed)?.[1];
  const head = headOf(under ?? typed);
  if (!head || head.value === null || head.rest.trim() !== "" || head.value === 0) return null;
  return under === undefined ? head.value : 1 / head.value;
}

function readMinus(text: string): Adjustment["minus"] | null {
  const typed = text.trim();
  if (typed.toLowerCase() === FIRST) return FIRST;
  const head = headOf(typed);
  if (head && head.value !== null && head.rest.trim() === "") return head.value;
  return readClock(typed);
}

/** @returns what a column's readings are changed by; in words what of it can't be read */
export function adjustmentOf({
  times = "",
  minus = "",
}: ColumnMapping): Adjustment | { readonly problem: string } {
  const factor = times.trim() === "" ? 1 : readTimes(times);
  if (factor === null)
    return { problem: `"${times}" is no factor; allowed: a number that isn't 0, as "-1" or "1/7"` };
  const off = minus.trim() === "" ? 0 : readMinus(minus);
  if (off === null)
    return { problem: `"${minus}" can't be taken off; allowed: a number, a time, or "first"` };
  return { times: factor, minus: off };
}

/** @returns what is done to a column's readings, in words; null where nothing is */
export function adjustmentInWords({ times = "", minus = "" }: ColumnMapping): string | null {
  const off = minus.trim() === FIRST ? "its first" : minus.trim();
  const words = [
    ...(off === "" ? [] : [`less ${off}`]),
    ...(times.trim() === "" ? [] : [`times ${times.trim()}`]),
  ];
  return words.length === 0 ? null : words.join(", ");
}
