import type { SizeAllows, WantedHold } from "../../decide/size/input.ts";
import { type Sizes, sizesOf } from "../../decide/size/size.ts";
import type { CellInput } from "../../physics/rundown.ts";
import type { Book } from "../book.ts";
import { limitsInput } from "../limitsInput.ts";
import type { Family } from "./families.ts";
import { type Side, type SideNumbers, sizeBuild } from "./sides.ts";

/** What every family of a question is asked. */
export interface FamilyNeed {
  readonly hold: WantedHold;
  /** the rotor's own come with its family */
  readonly allows: Omit<SizeAllows, "rotor">;
  readonly cell: CellInput;
}

/** @returns what motor and cell allow a size: a motor's greatest voltage and current belong to the winding it has, not to the one that is looked for */
export function allowedBy(
  book: Book,
  { build, run }: Pick<Side, "build" | "run">,
  motor: string,
): FamilyNeed["allows"] {
  const { cell } = run.pack;
  const { motor: allowed } = limitsInput(book, { ...build, motor }, run);
  return {
    motor: { ...allowed, ratedVoltage: null, maxCurrent: null },
    cell: { maxCurrent: cell.maxCurrent ?? null, minimumVoltage: cell.minimumVoltage },
  };
}

/** @returns one family over the sizes [m] @throws as {@link sizesOf} */
export function familySizes(
  { hold, allows, cell }: FamilyNeed,
  numbers: SideNumbers,
  family: Family,
  diameters: readonly number[],
): Sizes {
  const build = sizeBuild(numbers, family);
  return sizesOf({ build, allows: { ...allows, rotor: family.body }, need: { hold }, cell }, diameters);
}
