import { MOST_COMBINATIONS } from "../../../../shared/decide/choose/count.ts";
import { listed } from "../../../../shared/decide/verdict/attitudeWords.ts";
import { formatFixed } from "../../../../shared/units/format.ts";

/** Entries of each list of parts to try; null where a field can't be read. */
export interface Counts {
  readonly motors: number | null;
  /** sizes of those in a duct */
  readonly rotors: number | null;
  /** sizes of open propellers */
  readonly propellers: number | null;
  readonly packs: number | null;
  /** each at each gap, for rotors in a duct */
  readonly skirts: number | null;
  /** each once, and none, for propellers */
  readonly stands: number | null;
  readonly duties: number | null;
}

type Words = readonly [key: keyof Counts, one: string, many: string];

const SHARED: readonly Words[] = [
  ["motors", "motor", "motors"],
  ["packs", "pack", "packs"],
];
const DUCTED: readonly Words[] = [
  ["rotors", "rotor size", "rotor sizes"],
  ["skirts", "skirt or gap", "skirts and gaps"],
];
const OPEN: readonly Words[] = [
  ["propellers", "propeller size", "propeller sizes"],
  ["stands", "skirt or none", "skirts or none"],
];
const DUTIES: Words = ["duties", "throttle", "throttles"];
/** As the combinations count them. */
const ORDER: readonly (keyof Counts)[] = [
  "motors",
  "rotors",
  "propellers",
  "packs",
  "skirts",
  "stands",
  "duties",
];

function productOf(counts: Counts, words: readonly Words[]): number | null {
  return words.reduce<number | null>((product, [key]) => {
    const count = counts[key];
    return product === null || count === null ? null : product * count;
  }, 1);
}

/** @returns how many combinations the parts to try make; null while one of them is not known */
export function combinationsIn(counts: Counts): number | null {
  const [shared, ducted, open] = [[...SHARED, DUTIES], DUCTED, OPEN].map((words) => productOf(counts, words));
  return shared === null || ducted === null || open === null ? null : shared * (ducted + open);
}

function factorsOf(counts: Counts, words: readonly Words[]): string {
  const inOrder = [...words].sort(([a], [b]) => ORDER.indexOf(a) - ORDER.indexOf(b));
  const factors = inOrder.map(([key, one, many]) => {
    const count = counts[key] ?? 0;
    return `${formatFixed(count, 0)} ${count === 1 ? one : many}`;
  });
  return factors.join(" × ");
}

/** @returns "2 motors × 15 rotor sizes × 1 pack × 13 skirts and gaps = 390 combinations"; throttles only where there are several, propellers only where there are any */
export function countSentence(counts: Counts): string {
  const shared = counts.duties === 1 ? SHARED : [...SHARED, DUTIES];
  const [ducted, open] = [counts.rotors !== 0, counts.propellers !== 0];
  const every = [...shared, ...(ducted || !open ? DUCTED : []), ...(open ? OPEN : [])];
  const unread = every.filter(([key]) => counts[key] === null).map(([, , many]) => many);
  if (unread.length > 0) return `Not counted yet: the ${listed(unread)} can't be read`;
  const count = combinationsIn(counts) ?? 0;
  const both = `${factorsOf(counts, shared)} × (${factorsOf(counts, DUCTED)} + ${factorsOf(counts, OPEN)})`;
  const product = ducted && open ? both : factorsOf(counts, every);
  return `${product} = ${formatFixed(count, 0)} ${count === 1 ? "combination" : "combinations"}`;
}

/** @returns why so many can't be solved and what to narrow; null where they can */
export function tooManyText(counts: Counts): string | null {
  const count = combinationsIn(counts);
  if (count === null || count <= MOST_COMBINATIONS) return null;
  const all = [...SHARED, ...DUCTED, ...OPEN, DUTIES];
  const [largest] = [...all].sort(([a], [b]) => (counts[b] ?? 0) - (counts[a] ?? 0));
  const most = formatFixed(MOST_COMBINATIONS, 0);
  return `At most ${most} combinations are solved at once: narrow the ${largest[2]} first, or take a wider step.`;
}
