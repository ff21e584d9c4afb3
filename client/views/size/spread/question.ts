import { bookOfBuild } from "../../../../shared/book/bookOfBuild.ts";
import type { Book } from "../../../../shared/book/resolve.ts";
import type { FamilyAsked } from "../../../../shared/book/size/familySpread.ts";
import type { Side } from "../../../../shared/book/size/sides.ts";
import type { WantedHold } from "../../../../shared/decide/size/input.ts";
import { keepsLimits } from "../../../../shared/decide/size/size.ts";
import type { Sized } from "../answer.ts";

/** Sizes at which a band is worked out, about: a band is smooth, and each takes a fit's worth of samples. */
const ABOUT = 16;

/** @returns places of a list about so many apart that some sixteen are left, its last and one other among them */
export function fewOf(count: number, also: number | null): number[] {
  const step = Math.max(1, Math.floor(count / ABOUT));
  const places = Array.from({ length: count }, (_, i) => i);
  return places.filter((i) => i % step === 0 || i === count - 1 || i === also);
}

/** @returns what is asked of a family's uncertainty, all of it plain data */
export function spreadQuestion(book: Book, side: Side, shown: Sized, hold: WantedHold): FamilyAsked {
  const { kind, build, numbers } = side;
  const rows = fewOf(shown.rows.length, shown.least).map((i) => shown.rows[i]);
  return {
    book: bookOfBuild(book, { ...build, rotor: shown.id }),
    side: { kind, build, numbers },
    family: shown.id,
    hold,
    diameters: rows.map(({ diameter }) => diameter),
    keeps: rows.map(keepsLimits),
  };
}
