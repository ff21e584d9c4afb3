import type { Book } from "../../../../shared/book/book.ts";
import { ledgerOf } from "../../../../shared/book/mass/ledger.ts";
import type { Build } from "../../../../shared/model/build.ts";
import { formatQuantity } from "../../../../shared/units/format.ts";
import type { PartTried } from "../../../state/partsTried.ts";
import { type PartChoice, partChoices, partValue } from "../../../ui/partChoices.ts";

export const PART_LABELS: Readonly<Record<PartTried, string>> = {
  rotor: "Rotor",
  motor: "Motor",
  pack: "Pack",
  skirt: "Skirt",
};

/** A part as Match lists it. */
export interface ListedPart extends PartChoice {
  /** "Bell motor, 18 mm · 19 g" */
  readonly label: string;
  /** its record, or its name where none is chosen, says what it weighs */
  readonly weighed: boolean;
}

/** Mass of one part in a build [kg]; null where nothing says it. */
function massOf(book: Book, build: Build, part: PartTried): number | null {
  const line = ledgerOf(book, build).lines.find(({ of }) => of === part);
  return line && line.basis !== "missing" ? line.mass : null;
}

/** @returns the parts that can stand in a build, each with its own mass; the first of an empty exchange is the build's own */
export function partList(book: Book, build: Build, part: PartTried): ListedPart[] {
  return partChoices(book, build, part).map((choice) => {
    const mass = massOf(book, { ...build, ...choice.exchange }, part);
    const isNone = choice.value === "";
    const words = mass === null ? "mass not known" : formatQuantity(mass, "mass", { digits: 2 });
    return {
      ...choice,
      label: isNone ? choice.name : `${choice.name} · ${words}`,
      weighed: isNone || mass !== null,
    };
  });
}

/** @returns the name of the part that a build has: "Bell motor, 18 mm" */
export function partName(book: Book, build: Build, part: PartTried): string {
  const value = partValue(build, part);
  return partChoices(book, build, part).find((choice) => choice.value === value)?.name ?? value;
}
