import type { Book } from "../../../shared/book/resolve.ts";
import { bookOfNeed, withDrawn } from "../../../shared/book/size/need/bookOfNeed.ts";
import type { NeedParts, TypedNeed } from "../../../shared/book/size/need/typedNeed.ts";
import type { StoredOf } from "../../../shared/model/record.ts";
import type { Asked } from "./asked.ts";
import { usualNeed } from "./need/address.ts";

/** What is sized: a build of the book, or a need that is typed, on the book with what was typed beside it. */
export interface Subject {
  readonly book: Book;
  readonly build: StoredOf<"builds">;
  readonly need: TypedNeed | null;
}

/** Diameter at which a rotor is put down before any size is known [m]. */
const FIRST_SIZE = 0.045;

/** @returns parts that a typed need begins with: the build's, else the first of the book, else typed ones */
export function firstParts(book: Book, build: StoredOf<"builds"> | null): NeedParts {
  const first = (records: readonly { readonly id: string }[]) => records[0]?.id ?? null;
  const own = build?.data;
  return {
    surface: own?.surface ?? first(book.surfaces),
    skirt: own?.skirt ?? first(book.skirts),
    pack: own?.pack ?? first(book.packs),
    motor: own?.motor ?? first(book.motors),
  };
}

/** Parts that the book no longer has are typed. */
function partsThere(book: Book, { surface, skirt, pack, motor }: NeedParts): NeedParts {
  const there = (records: readonly { readonly id: string }[], id: string | null) =>
    records.some((record) => record.id === id) ? id : null;
  return {
    surface: there(book.surfaces, surface),
    skirt: there(book.skirts, skirt),
    pack: there(book.packs, pack),
    motor: there(book.motors, motor),
  };
}

/** @returns what is sized; without a build in the book, a need that is yet to be typed */
export function subjectOf(book: Book, build: StoredOf<"builds"> | null, { need, drawn }: Asked): Subject {
  const diameter = build?.data.diameter ?? book.rotors[0]?.data.sizes[0].diameter ?? FIRST_SIZE;
  const withDrawings = withDrawn(book, drawn, diameter);
  if (!need && build) return { book: withDrawings, build, need: null };
  const asked = need ?? usualNeed(firstParts(book, null));
  const typed = { ...asked, parts: partsThere(book, asked.parts) };
  return { ...bookOfNeed(withDrawings, typed, diameter), need: typed };
}
