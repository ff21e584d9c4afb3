import { OutOfRangeError } from "../../numeric/errors.ts";
import type { Problem } from "./problem.ts";
import type { Places } from "./result.ts";

/** Rotor and size, or skirt and gap, laid out in one row. */
interface Pair {
  readonly outer: number;
  readonly inner: number;
}

/** The mixed radix of a question's sets. */
export interface Radix {
  readonly motors: number;
  /** rotor and size together */
  readonly sizedRotors: readonly Pair[];
  readonly packs: number;
  readonly duties: number;
  /** skirt and gap together */
  readonly fittedSkirts: readonly Pair[];
}

function paired(lists: readonly (readonly unknown[])[]): Pair[] {
  return lists.flatMap((list, outer) => list.map((_, inner) => ({ outer, inner })));
}

/**
 * The mixed radix of a question's sets.
 *
 *     index = (((motor·W + wheel)·P + pack)·D + duty)·S + seal;  a wheel is a rotor at one size, a seal a skirt at one gap
 *
 * @param problem - admissions [-]
 * @returns counts of motors, packs, duties [-], wheels and seals
 *
 * Valid for any lists; the gap runs fastest, so that neighbours are alike. Source: mixed radix
 */
export function radixOf(problem: Problem): Radix {
  return {
    motors: problem.motors.length,
    sizedRotors: paired(problem.rotors.map(({ sizes }) => sizes)),
    packs: problem.packs.length,
    duties: problem.duties.length,
    fittedSkirts: paired(problem.skirts.map(({ gaps }) => gaps)),
  };
}

/** @returns the number of sets that a radix counts [-] */
export function setsIn({ motors, sizedRotors, packs, duties, fittedSkirts }: Radix): number {
  return motors * sizedRotors.length * packs * duties * fittedSkirts.length;
}

/**
 * The parts that an index stands for.
 *
 *     remainders of the index by S, D, P, W in turn
 *
 * @param radix - from {@link radixOf}
 * @param index - of the set, 0 to N − 1 [-]
 * @returns places in the admitted lists [-]
 * @throws {OutOfRangeError} on an index that counts no set
 *
 * Valid and source: as {@link radixOf}
 */
export function placesOf(radix: Radix, index: number): Places {
  const count = setsIn(radix);
  if (!(Number.isInteger(index) && index >= 0 && index < count))
    throw new OutOfRangeError("index", index, `a whole number, 0 to ${count - 1}`);
  const { sizedRotors, packs, duties, fittedSkirts } = radix;
  let rest = index;
  const digit = (base: number): number => {
    const value = rest % base;
    rest = (rest - value) / base;
    return value;
  };
  const fittedSkirt = fittedSkirts[digit(fittedSkirts.length)];
  const duty = digit(duties);
  const pack = digit(packs);
  const sizedRotor = sizedRotors[digit(sizedRotors.length)];
  return {
    motor: rest,
    rotor: sizedRotor.outer,
    size: sizedRotor.inner,
    pack,
    duty,
    skirt: fittedSkirt.outer,
    gap: fittedSkirt.inner,
  };
}
