import type { Family } from "../../../../shared/book/size/families.ts";
import type { Side } from "../../../../shared/book/size/sides.ts";
import type { SizeRow } from "../../../../shared/decide/size/row.ts";
import { type Suits, suitsDuty } from "../../../../shared/decide/size/suits.ts";
import { type Answered, bestOf, type Sized } from "../answer.ts";

/** One family at its best size, or at the middle of those that do it, and how it is used there. */
export interface Used {
  readonly id: string;
  readonly name: string;
  readonly row: SizeRow;
  readonly suits: Suits;
}

/** The best size; where none keeps every limit, the one that takes least. */
function rowOf(sized: Sized): SizeRow | null {
  const power = ({ packPower }: SizeRow) => packPower ?? Number.POSITIVE_INFINITY;
  const least = [...sized.rows].sort((a, b) => power(a) - power(b))[0];
  return bestOf(sized) ?? (least && Number.isFinite(power(least)) ? least : null);
}

function usedOf(family: Family, sized: Sized): Used[] {
  const row = rowOf(sized);
  if (!row || row.phi === null || "thrust" in family.rotor) return [];
  const suits = suitsDuty(family.rotor, { phi: row.phi, diameter: row.diameter });
  return suits ? [{ id: family.id, name: family.name, row, suits }] : [];
}

/** @returns every family in a duct with where it is used and where it is best */
export function usedFamilies(side: Side | null, { families }: Answered): Used[] {
  if (side?.kind !== "ducted") return [];
  return families.flatMap((sized) => {
    const family = side.families.find(({ id }) => id === sized.id);
    return family ? usedOf(family, sized) : [];
  });
}
