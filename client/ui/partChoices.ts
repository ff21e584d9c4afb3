import type { Book } from "../../shared/book/book.ts";
import type { Build } from "../../shared/model/build.ts";
import { offered } from "../../shared/model/withdrawn.ts";
import { typedText } from "../../shared/units/shown.ts";

/** Parts of a build that another of the book can take the place of. */
export type Exchange = Partial<Pick<Build, "motor" | "rotor" | "diameter" | "pack" | "skirt" | "gear">>;

/** A part of the book, and what putting it into a build changes. */
export interface PartChoice {
  readonly value: string;
  readonly name: string;
  readonly exchange: Exchange;
}

/** Records in use, and the one that the build has. */
function recordsFor(book: Book, build: Build, part: "motor" | "pack" | "skirt" | "gear"): PartChoice[] {
  const records: readonly {
    readonly id: string;
    readonly data: { readonly name: string; readonly retired?: string };
  }[] = book[`${part}s`];
  const listed = offered(records, build[part]).map(({ id, data }) => ({
    value: id,
    name: data.name,
    exchange: { [part]: id },
  }));
  return build[part] === null ? [{ value: "", name: "none", exchange: {} }, ...listed] : listed;
}

const rotorValue = (rotor: string, diameter: number) => `${rotor} ${diameter}`;
const sized = (name: string, diameter: number) => `${name}, ${typedText(diameter, "length", 4)}`;

function rotorsFor(book: Book, build: Build): PartChoice[] {
  const sizes = offered(book.rotors, build.rotor).flatMap(({ id, data }) =>
    data.sizes.map(({ diameter }) => ({
      value: rotorValue(id, diameter),
      name: sized(data.name, diameter),
      exchange: { rotor: id, diameter },
    })),
  );
  const own = partValue(build, "rotor");
  if (sizes.some(({ value }) => value === own)) return sizes;
  const name = book.rotors.find(({ id }) => id === build.rotor)?.data.name ?? "as it is";
  return [{ value: own, name: sized(name, build.diameter), exchange: {} }, ...sizes];
}

/** @returns which of {@link partChoices} a build has */
export function partValue(build: Build, part: PartKind): string {
  return part === "rotor" ? rotorValue(build.rotor, build.diameter) : (build[part] ?? "");
}

export type PartKind = "motor" | "rotor" | "pack" | "skirt" | "gear";

/** @returns the parts of the book that can stand in a build, its own among them; a rotor in every size of its record */
export function partChoices(book: Book, build: Build, part: PartKind): PartChoice[] {
  return part === "rotor" ? rotorsFor(book, build) : recordsFor(book, build, part);
}
