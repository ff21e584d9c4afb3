import { findById } from "../../../shared/book/book.ts";
import type { Book } from "../../../shared/book/resolve.ts";
import { diametersOf } from "../../../shared/book/size/diameters.ts";
import type { Family, LeftOutFamily, RotorKind } from "../../../shared/book/size/families.ts";
import { allowedBy, type FamilyNeed } from "../../../shared/book/size/familySizes.ts";
import { type Side, type SideNumbers, sideOf } from "../../../shared/book/size/sides.ts";
import type { Settings } from "./settings.ts";

/** Families of one kind over their sizes. */
export interface AskedSide {
  readonly kind: RotorKind;
  readonly numbers: SideNumbers;
  readonly families: readonly Family[];
  /** [m], rising */
  readonly diameters: readonly number[];
}

/** What is asked of the sizes, all of it plain data: it goes to another thread. */
export interface Question extends FamilyNeed {
  /** the build's own kind first */
  readonly sides: readonly AskedSide[];
}

/** A question with what of the book it stands on. */
export interface Put {
  readonly question: Question;
  readonly sides: readonly Side[];
  readonly leftOut: readonly LeftOutFamily[];
  /** the sizes of a kind whose ends are reversed */
  readonly reversed: RotorKind | null;
}

const KINDS: readonly RotorKind[] = ["ducted", "propeller"];

/** @returns the question that the fields put to the book; null where build or motor have no numbers yet */
export function questionOf(book: Book, settings: Settings): Put | null {
  const { build, hold, motor } = settings;
  const own = findById(book.rotors, build.rotor)?.data.kind ?? "ducted";
  const kinds = own === "ducted" ? KINDS : [...KINDS].reverse();
  const sides = kinds.flatMap((kind) => sideOf(book, build, kind, settings) ?? []);
  const [first] = sides;
  if (!first) return null;
  const asked = sides.map(({ kind, numbers, families }) => ({
    kind,
    numbers,
    families,
    diameters: diametersOf(settings.ranges[kind]),
  }));
  return {
    sides,
    leftOut: sides.flatMap(({ leftOut }) => leftOut),
    reversed: asked.find(({ diameters }) => diameters.length === 0)?.kind ?? null,
    question: {
      sides: asked,
      allows: allowedBy(book, first, motor),
      hold,
      cell: first.run.pack.cell,
    },
  };
}
