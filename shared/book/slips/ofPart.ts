import type { Build } from "../../model/build.ts";
import type { CollectionName } from "../../model/collections.ts";
import type { DataOf } from "../../model/record.ts";
import { formatQuantity } from "../../units/format.ts";
import { type Book, findById } from "../book.ts";
import { type Slip, slipOf, UNIT } from "./slip.ts";
import { unusualIn } from "./usual.ts";

/** Sizes of one rotor family seldom lie further apart [-]. Judgement. */
const SIZES_APART = 3;

/** @returns the diameter as a slip where it is far from every size of its rotor */
export function slipOfDiameter(book: Book, rotorId: string, diameter: number): Slip[] {
  const sizes = (findById(book.rotors, rotorId)?.data.sizes ?? []).map((size) => size.diameter);
  if (sizes.length === 0) return [];
  const listed = sizes.map((size) => formatQuantity(size, "length")).join(", ");
  const [low, high] = [Math.min(...sizes), Math.max(...sizes)];
  const said = `the rotor's sizes are ${listed}. ${UNIT}`;
  return slipOf({ path: "diameter", value: diameter, low, high, slack: SIZES_APART, said });
}

/** A vehicle weighs more than what is known to be in it. */
function slipOfMass(book: Book, { rotor, motor, pack, skirt, diameter, vehicle }: Build): Slip[] {
  if (vehicle.mass === undefined) return [];
  const size = findById(book.rotors, rotor)?.data.sizes.find((each) => each.diameter === diameter);
  const parts = [
    size,
    ...[findById(book.motors, motor), findById(book.packs, pack), findById(book.skirts, skirt)].map(
      (part) => part?.data,
    ),
  ];
  const known = parts.reduce((sum, part) => sum + (part?.mass ?? 0), 0);
  const said = `the parts in it weigh ${formatQuantity(known, "mass")} together. ${UNIT}`;
  return slipOf({ path: "vehicle.mass", value: vehicle.mass, low: known, high: null, slack: 1, said });
}

/** @returns one slip for each field, the first that was found */
export function firstOfEach(slips: readonly Slip[]): Slip[] {
  return slips.filter(({ path }, i) => slips.findIndex((each) => each.path === path) === i);
}

/**
 * Numbers of a part or a build that may be slips: a rotor of 0.38 m, a K_v of 420 000, a vehicle lighter than its parts.
 *
 * @param book - what the record is compared with
 * @param collection - of the record
 * @param data - as it would be stored, SI
 * @returns what to ask about before it is saved, in the order of the fields
 */
export function slipsOfPart<C extends Exclude<CollectionName, "tests">>(
  book: Book,
  collection: C,
  data: DataOf<C>,
): Slip[] {
  const own = collection === "instruments" ? [] : unusualIn(collection, data);
  if (collection !== "builds") return own;
  const build = data as Build;
  return firstOfEach([
    ...slipOfDiameter(book, build.rotor, build.diameter),
    ...slipOfMass(book, build),
    ...own,
  ]);
}
