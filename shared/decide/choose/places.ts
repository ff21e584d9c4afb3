import { OutOfRangeError } from "../../numeric/errors.ts";
import type { Problem } from "./problem.ts";
import type { Places } from "./result.ts";

/** Rotor and size, or skirt and gap, laid out in one row. */
interface Pair {
  readonly outer: number;
  readonly inner: number;
}

/** The mixed radix of a question's combinations. */
export interface Radix {
  readonly motors: number;
  /** rotor and size together; those of propellers behind those of rotors in a duct */
  readonly sizedRotors: readonly Pair[];
  readonly packs: number;
  readonly duties: number;
  /** skirt and gap together; what propellers stand on behind what rotors in a duct pull through */
  readonly fittedSkirts: readonly Pair[];
  /** how many of the sized rotors, fitted skirts and combinations are those of rotors in a duct */
  readonly ducted: { readonly rotors: number; readonly skirts: number; readonly combinations: number };
}

/** Digits of a combination's index. */
export interface Digits {
  motor: number;
  sizedRotor: number;
  pack: number;
  duty: number;
  fittedSkirt: number;
}

function paired(lists: readonly (readonly unknown[])[]): Pair[] {
  return lists.flatMap((list, outer) => list.map((_, inner) => ({ outer, inner })));
}

const sizesOf = (families: readonly { readonly sizes: readonly unknown[] }[]): Pair[] =>
  paired(families.map(({ sizes }) => sizes));

/**
 * The mixed radix of a question's combinations.
 *
 *     index = (((motor·W + sized rotor)·P + pack)·D + duty)·S + fitted skirt,  W sized rotors, S fitted skirts;
 *     behind them the combinations of propellers, each at one size, and what they stand on in the same order
 *
 * @param problem - the lists of parts to try [-]
 * @returns counts of motors, packs, duties [-], sized rotors and fitted skirts
 *
 * Valid for any lists; the gap runs fastest, so that neighbours are alike. Source: mixed radix
 */
export function radixOf({
  motors,
  rotors,
  propellers = [],
  packs,
  skirts,
  stands = [],
  duties,
}: Problem): Radix {
  const ducted = { rotors: sizesOf(rotors), skirts: paired(skirts.map(({ gaps }) => gaps)) };
  const each = motors.length * packs.length * duties.length;
  return {
    motors: motors.length,
    sizedRotors: [...ducted.rotors, ...sizesOf(propellers)],
    packs: packs.length,
    duties: duties.length,
    fittedSkirts: [...ducted.skirts, ...stands.map((_, outer) => ({ outer, inner: 0 }))],
    ducted: {
      rotors: ducted.rotors.length,
      skirts: ducted.skirts.length,
      combinations: each * ducted.rotors.length * ducted.skirts.length,
    },
  };
}

/** @returns the number of combinations that a radix counts [-] */
export function combinationsIn({ motors, sizedRotors, packs, duties, fittedSkirts, ducted }: Radix): number {
  const open = (sizedRotors.length - ducted.rotors) * (fittedSkirts.length - ducted.skirts);
  return ducted.combinations + motors * packs * duties * open;
}

/** @returns whether a sized rotor is a propeller's */
export function isOpen({ ducted }: Radix, sizedRotor: number): boolean {
  return sizedRotor >= ducted.rotors;
}

/** Writes the digits of an index, as in {@link radixOf}; allocates nothing. */
export function writeDigits(
  { sizedRotors, fittedSkirts, packs, duties, ducted }: Radix,
  index: number,
  digits: Digits,
): void {
  const open = index >= ducted.combinations;
  const skirts = open ? fittedSkirts.length - ducted.skirts : ducted.skirts;
  const rotors = open ? sizedRotors.length - ducted.rotors : ducted.rotors;
  let rest = open ? index - ducted.combinations : index;
  const fittedSkirt = rest % skirts;
  rest = (rest - fittedSkirt) / skirts;
  digits.duty = rest % duties;
  rest = (rest - digits.duty) / duties;
  digits.pack = rest % packs;
  rest = (rest - digits.pack) / packs;
  const sizedRotor = rest % rotors;
  digits.motor = (rest - sizedRotor) / rotors;
  digits.fittedSkirt = open ? fittedSkirt + ducted.skirts : fittedSkirt;
  digits.sizedRotor = open ? sizedRotor + ducted.rotors : sizedRotor;
}

/**
 * The parts that an index stands for.
 *
 *     remainders of the index by S, D, P, W in turn
 *
 * @param radix - from {@link radixOf}
 * @param index - of the combination, 0 to N − 1 [-]
 * @returns places in the lists of parts to try [-]
 * @throws {OutOfRangeError} on an index that counts no combination
 *
 * Valid and source: as {@link radixOf}
 */
export function placesOf(radix: Radix, index: number): Places {
  const count = combinationsIn(radix);
  if (!(Number.isInteger(index) && index >= 0 && index < count))
    throw new OutOfRangeError("index", index, `a whole number, 0 to ${count - 1}`);
  const digits: Digits = { motor: 0, sizedRotor: 0, pack: 0, duty: 0, fittedSkirt: 0 };
  writeDigits(radix, index, digits);
  const sizedRotor = radix.sizedRotors[digits.sizedRotor];
  const fittedSkirt = radix.fittedSkirts[digits.fittedSkirt];
  return {
    open: isOpen(radix, digits.sizedRotor),
    motor: digits.motor,
    rotor: sizedRotor.outer,
    size: sizedRotor.inner,
    pack: digits.pack,
    duty: digits.duty,
    skirt: fittedSkirt.outer,
    gap: fittedSkirt.inner,
  };
}
