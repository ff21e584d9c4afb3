import { MOST_SETS } from "../../../../shared/decide/choose/count.ts";
import { listed } from "../../../../shared/decide/verdict/attitudeWords.ts";
import { formatFixed } from "../../../../shared/units/format.ts";

/** Entries of each admission; null where a field can't be read. */
export interface Counts {
  readonly motors: number | null;
  readonly rotors: number | null;
  readonly packs: number | null;
  readonly skirts: number | null;
  readonly duties: number | null;
}

const WORDS: readonly (readonly [keyof Counts, string, string])[] = [
  ["motors", "motor", "motors"],
  ["rotors", "rotor size", "rotor sizes"],
  ["packs", "pack", "packs"],
  ["skirts", "skirt or gap", "skirts and gaps"],
  ["duties", "throttle", "throttles"],
];

/** @returns the product of the admissions; null while one of them is not known */
export function setsIn(counts: Counts): number | null {
  return WORDS.reduce<number | null>((product, [key]) => {
    const count = counts[key];
    return product === null || count === null ? null : product * count;
  }, 1);
}

/** @returns "2 motors × 15 rotor sizes × 1 pack × 13 skirts and gaps = 390 sets"; throttles only where there are several */
export function countSentence(counts: Counts): string {
  const factors = WORDS.filter(([key]) => key !== "duties" || counts.duties !== 1);
  const unread = factors.filter(([key]) => counts[key] === null).map(([, , many]) => many);
  if (unread.length > 0) return `Not counted yet: the ${listed(unread)} can't be read`;
  const product = factors.map(([key, one, many]) => {
    const count = counts[key] ?? 0;
    return `${formatFixed(count, 0)} ${count === 1 ? one : many}`;
  });
  const sets = setsIn(counts) ?? 0;
  return `${product.join(" × ")} = ${formatFixed(sets, 0)} ${sets === 1 ? "set" : "sets"}`;
}

/** @returns why so many can't be solved and what to narrow; null where they can */
export function tooManyText(counts: Counts): string | null {
  const sets = setsIn(counts);
  if (sets === null || sets <= MOST_SETS) return null;
  const [largest] = [...WORDS].sort(([a], [b]) => (counts[b] ?? 0) - (counts[a] ?? 0));
  const most = formatFixed(MOST_SETS, 0);
  return `At most ${most} sets are solved at once: narrow the ${largest[2]} first, or take a wider step.`;
}
