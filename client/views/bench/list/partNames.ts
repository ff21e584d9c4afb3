import type { Book } from "../../../../shared/book/book.ts";
import type { NamedCollection } from "../../../../shared/model/collections.ts";
import type { BenchTest } from "../../../../shared/model/tests/index.ts";
import { KINDS } from "../record/kinds.ts";

/** @returns a test's title, its kind where it has none */
export function nameOf(test: BenchTest): string {
  return test.title === "" ? KINDS[test.kind].name : test.title;
}

/** @returns the names of a test's parts, "B8 42 mm · pane glass" */
export function partNames(test: BenchTest, book: Book | null): string {
  const said = test as unknown as Readonly<Record<string, unknown>>;
  const names = KINDS[test.kind].fields.flatMap((field) => {
    if (field.type !== "part") return [];
    const part = book?.[field.collection].find(({ id }) => id === said[field.key]);
    return part ? [part.data.name] : [];
  });
  const others = test.kind === "weigh-in" && test.what ? [test.what] : [];
  return [...names, ...others].join(" · ");
}

export interface PartChoice {
  /** "rotor" */
  readonly key: string;
  readonly title: string;
  readonly parts: readonly { readonly id: string; readonly name: string }[];
}

const CHOICES: readonly (readonly [key: string, title: string, collection: NamedCollection])[] = [
  ["rotor", "Rotors", "rotors"],
  ["motor", "Motors", "motors"],
  ["pack", "Packs", "packs"],
  ["skirt", "Skirts", "skirts"],
  ["surface", "Surfaces", "surfaces"],
  ["gear", "Running gear", "gears"],
  ["build", "Builds", "builds"],
];

/** @returns the parts by which the list can be filtered */
export function partChoices(book: Book | null): PartChoice[] {
  return CHOICES.flatMap(([key, title, collection]) => {
    const parts = (book?.[collection] ?? []).map(({ id, data }) => ({ id, name: data.name }));
    return parts.length > 0 ? [{ key, title, parts }] : [];
  });
}
