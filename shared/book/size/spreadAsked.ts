import type { SizeRow } from "../../decide/size/row.ts";
import { keepsLimits, type Sizes } from "../../decide/size/size.ts";
import type { FamilyAsked } from "./familySpread.ts";

/** Sizes at which a band is worked out, about: a band is smooth, and each takes a fit's worth of samples. */
const ABOUT = 16;

/** @returns places of a list about so many apart that some sixteen are left, its last and one other among them */
export function fewOf(count: number, also: number | null): number[] {
  const step = Math.max(1, Math.floor(count / ABOUT));
  const places = Array.from({ length: count }, (_, i) => i);
  return places.filter((i) => i % step === 0 || i === count - 1 || i === also);
}

/** @returns what is asked of a family's uncertainty: a band over some of its sizes */
export function spreadAsked(
  of: Omit<FamilyAsked, "diameters" | "keeps">,
  { rows, least }: Pick<Sizes, "rows" | "least">,
): FamilyAsked {
  const few: readonly SizeRow[] = fewOf(rows.length, least).map((i) => rows[i]);
  return { ...of, diameters: few.map(({ diameter }) => diameter), keeps: few.map(keepsLimits) };
}
