import { inWords } from "../../../ui/count.ts";
import type { Points, Thinning } from "./points.ts";

const lines = (count: number): string => `${inWords(count)} ${count === 1 ? "line" : "lines"}`;
const be = (count: number): string => (count === 1 ? "is" : "are");
const capital = (text: string): string => text[0].toUpperCase() + text.slice(1);

/** @returns how many lines become rows, how many are skipped and how many nobody asked for, in words */
export function countInWords({
  read,
  skipped,
  passedOver,
}: Pick<Points, "read" | "skipped" | "passedOver">): string {
  const left = skipped === 0 ? "none is skipped" : `${lines(skipped)} ${be(skipped)} skipped`;
  const other = passedOver === 0 ? "" : `; ${lines(passedOver)} ${be(passedOver)} not asked for`;
  return capital(`${lines(read)} can be read, ${left}${other}.`);
}

/** @returns n as "8th" */
export function ordinal(n: number): string {
  const tens = n % 100;
  const ends = ["th", "st", "nd", "rd"];
  return `${n}${tens > 10 && tens < 14 ? "th" : (ends[n % 10] ?? "th")}`;
}

/** @returns what was left out of a dense log, in words; null where nothing was */
export function thinnedInWords({ of, every, kept }: Thinning): string | null {
  return every === 1 ? null : `every ${ordinal(every)} line kept, ${kept} of ${of}`;
}
