import { type Problem, sizesIn, skirtsIn } from "./problem.ts";

/** What adds up over the parts of a combination. */
export const SUMMED = ["mass", "height", "price"] as const;
export type Summed = (typeof SUMMED)[number];

/** What the parts bring to one sum, by their digits. */
export interface Sums {
  readonly fixed: number;
  readonly motors: Float64Array;
  readonly sizedRotors: Float64Array;
  readonly packs: Float64Array;
  readonly fittedSkirts: Float64Array;
}

type Summand = { readonly [S in Summed]?: number };

/** What a part brings to a sum that doesn't state it: a part without a price leaves the price of the combination unknown. */
const ABSENT: Readonly<Record<Summed, number>> = { mass: 0, height: 0, price: Number.NaN };

/**
 * Mass, height or price of every part, by its digit.
 *
 *     absent: 0; of a price: not known
 *
 * @param problem - the question
 * @param of - which [kg, m, -]
 * @returns the summands [same unit]
 *
 * Valid for any question
 */
export function sumsOf(problem: Problem, of: Summed): Sums {
  const { fixed, motors, packs } = problem;
  const listed = (parts: readonly Summand[]) => Float64Array.from(parts, (part) => part[of] ?? ABSENT[of]);
  return {
    fixed: of === "mass" ? fixed.vehicle.mass : fixed[of],
    motors: listed(motors),
    sizedRotors: listed(sizesIn(problem)),
    packs: listed(packs),
    fittedSkirts: listed(skirtsIn(problem)),
  };
}

/** @returns the sum of one combination, by its digits [kg, m or price, whichever it sums]; NaN where a part's price is not known */
export function sumAt(
  { fixed, motors, sizedRotors, packs, fittedSkirts }: Sums,
  digits: {
    readonly motor: number;
    readonly sizedRotor: number;
    readonly pack: number;
    readonly fittedSkirt: number;
  },
): number {
  return (
    fixed +
    motors[digits.motor] +
    sizedRotors[digits.sizedRotor] +
    packs[digits.pack] +
    fittedSkirts[digits.fittedSkirt]
  );
}
