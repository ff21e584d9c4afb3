import { counted } from "../../../ui/count.ts";
import type { ShortlistAnswer } from "../answers.ts";

type Items = ShortlistAnswer["items"];

/** @returns the places that each tie spans: first place and last */
function spans(items: Items): [number, number][] {
  const found: [number, number][] = [];
  items.forEach(({ place }, i) => {
    const last = found.at(-1);
    if (last && last[0] === place) last[1] = i + 1;
    else found.push([place, i + 1]);
  });
  return found;
}

/** @returns a place as shown: "1–4" where it is shared */
export function placeText(items: Items, at: number): string {
  const [first, last] = spans(items).find(([from, to]) => at + 1 >= from && at + 1 <= to) ?? [at + 1, at + 1];
  return first === last ? String(first) : `${first}–${last}`;
}

/** @returns which places tie, in words; what comes first is surely better where nothing ties with it */
export function tiesText(items: Items): string {
  const ties = spans(items).filter(([from, to]) => to > from);
  if (items.length < 2) return "";
  if (ties.length === 0)
    return "No two of them tie: each differs from the next by more than their uncertainty.";
  const [[from, to], ...more] = ties;
  const rest = more.length > 0 ? ` So do ${more.map(([a, b]) => `${a}–${b}`).join(", ")}.` : "";
  return `${from}–${to} tie: they differ by less than their uncertainty.${rest}`;
}

/** @returns how many reach the wanted chance; null where none is wanted */
export function enoughText(items: Items, wanted: number | null): string | null {
  if (wanted === null) return null;
  const enough = items.filter((each) => each.enough).length;
  return `${counted(enough, "combination")} of these ${items.length} hold${enough === 1 ? "s" : ""} in ${Math.round(wanted * 100)}\u202f% of the cases or more.`;
}
