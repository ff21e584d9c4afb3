import type { Build } from "../model/build.ts";
import { type Book, findById } from "./book.ts";
import { nearestSize } from "./rotorSize.ts";

/** What the parts of a build cost together. */
export interface PartsPrice {
  /** null where a part has no price [any currency] */
  readonly price: number | null;
  /** parts without a price, by name */
  readonly missing: readonly string[];
}

/**
 * The price of a build's motor, rotor, pack and skirt.
 *
 *     Σ price; not known where one of them has none
 *
 * @param book - of the parts; a rotor's price is that of its nearest listed size
 * @param build - a stored build, or one made of chosen parts; one without a skirt pays for none
 * @returns the sum, and the parts that lack a price [any currency]
 *
 * Valid for prices of one currency: none is stored with them. Source: as the search of Choose adds them
 */
export function partsPrice(book: Book, build: Build): PartsPrice {
  const rotor = findById(book.rotors, build.rotor)?.data;
  const parts = [
    findById(book.motors, build.motor)?.data,
    rotor && { name: rotor.name, price: nearestSize(rotor, build.diameter).price },
    findById(book.packs, build.pack)?.data,
    build.skirt === null ? null : findById(book.skirts, build.skirt)?.data,
  ].flatMap((part) => part ?? []);
  const missing = parts.filter(({ price }) => price === undefined).map(({ name }) => name);
  const sum = parts.reduce((total, { price = 0 }) => total + price, 0);
  return { price: missing.length === 0 ? sum : null, missing };
}
