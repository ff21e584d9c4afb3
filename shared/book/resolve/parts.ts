import type { Build } from "../../model/build.ts";
import type { StoredOf } from "../../model/record.ts";
import { type Book, findById } from "../book.ts";
import type { Missing } from "../missing.ts";

/** The records that a build points to; null where the book has none. */
export interface Parts {
  readonly rotor: StoredOf<"rotors"> | null;
  readonly motor: StoredOf<"motors"> | null;
  readonly pack: StoredOf<"packs"> | null;
  readonly skirt: StoredOf<"skirts"> | null;
  readonly surface: StoredOf<"surfaces"> | null;
}

/** @returns the records that a build points to */
export function partsOf(book: Book, build: Build): Parts {
  return {
    rotor: findById(book.rotors, build.rotor),
    motor: findById(book.motors, build.motor),
    pack: findById(book.packs, build.pack),
    skirt: findById(book.skirts, build.skirt),
    surface: findById(book.surfaces, build.surface),
  };
}

/** @returns whether an open propeller presses the build on */
export const isPropellerBuild = ({ rotor }: Parts): boolean => rotor?.data.kind === "propeller";

/** @returns the parts that a build needs and the book lacks */
export function missingParts(build: Build, parts: Parts): Missing[] {
  return Object.entries(parts).flatMap(([path, part]) => {
    if (part) return [];
    if (path !== "skirt" || build.skirt)
      return [{ path, message: `The build's ${path} is not in the book.` }];
    if (!parts.rotor || isPropellerBuild(parts)) return [];
    return [{ path, message: "A ducted rotor pulls through a skirt, and this build has none: choose one." }];
  });
}
