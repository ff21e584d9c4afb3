import { bookOfBuild } from "../../../../shared/book/bookOfBuild.ts";
import type { Book } from "../../../../shared/book/resolve.ts";
import type { FamilyAsked } from "../../../../shared/book/size/familySpread.ts";
import type { Side } from "../../../../shared/book/size/sides.ts";
import { spreadAsked } from "../../../../shared/book/size/spreadAsked.ts";
import type { WantedHold } from "../../../../shared/decide/size/input.ts";
import type { Sized } from "../answer.ts";

/** @returns what is asked of a family's uncertainty, all of it plain data */
export function spreadQuestion(book: Book, side: Side, shown: Sized, hold: WantedHold): FamilyAsked {
  const { kind, build, numbers } = side;
  const of = { book: bookOfBuild(book, { ...build, rotor: shown.id }), side: { kind, build, numbers } };
  return spreadAsked({ ...of, family: shown.id, hold }, shown);
}
