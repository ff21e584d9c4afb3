import type { Book } from "../../../../shared/book/book.ts";

/** By which field a test or a build names a part of a collection. */
const FIELDS: Readonly<Record<string, string>> = {
  rotors: "rotor",
  motors: "motor",
  packs: "pack",
  skirts: "skirt",
  surfaces: "surface",
  gears: "gear",
};

/** In how many tests and builds a part stands. */
export interface Uses {
  readonly tests: number;
  readonly builds: number;
}

/** @returns tests and builds that name a part; null for what is no part of a build */
export function usesOf(
  { tests, builds }: Pick<Book, "tests" | "builds">,
  collection: string,
  id: string,
): Uses | null {
  const field = FIELDS[collection];
  if (field === undefined) return null;
  const names = ({ data }: { readonly data: object }) =>
    (data as Readonly<Record<string, unknown>>)[field] === id;
  return { tests: tests.filter(names).length, builds: builds.filter(names).length };
}
