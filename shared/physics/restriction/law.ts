import type { Fluid } from "../air.ts";
import type { Note } from "../note.ts";
import type { Description } from "../working.ts";

/** State of the air that restrictions ask for; the ambient pressure is asked for by holes alone. */
export interface LeakAir extends Fluid {
  /** ambient, absolute [Pa] */
  readonly pressure?: number;
}

/** Of a restriction that is part of the lip: what its pull under the land needs. */
export interface UnderLip<R> {
  /** part of the skirt's perimeter that it stands for [m] */
  readonly length: (restriction: R) => number;
  /** what of Δp is lost by friction along the land [Pa]; null where nothing passes under it */
  readonly frictionDrop: (restriction: R, air: LeakAir, pressure: number) => number | null;
  /** how its share σ of the suction comes about */
  readonly shareWords: (restriction: R) => string;
}

/** How a kind is named and explained. */
export interface RestrictionWords<R> {
  /** as in "flow through the lip gap" */
  readonly name: string;
  readonly equation: string;
  /** its own numbers: symbol, meaning, SI unit */
  readonly numbers: { readonly [K in Exclude<keyof R, "kind">]?: Description };
  /** of the air in it at Δp [Pa], where the law is one of a velocity [m/s]; else null */
  readonly velocity: ((restriction: R, air: LeakAir, pressure: number) => number) | null;
  readonly source: string;
}

/** Everything that one kind of restriction says of itself: a strictly rising law Q(Δp) with Q(0) = 0. */
export interface RestrictionLaw<R> {
  /** Q [m³/s] at Δp [Pa], ≥ 0 */
  readonly flow: (restriction: R, air: LeakAir, pressure: number) => number;
  /** dQ/dΔp [m³/(s·Pa)] at Δp [Pa], > 0 */
  readonly slope: (restriction: R, air: LeakAir, pressure: number) => number;
  /** whether any air passes at Δp > 0 */
  readonly isOpen: (restriction: R) => boolean;
  /** null: no part of the lip */
  readonly underLip: UnderLip<R> | null;
  /** what it asks of the air */
  readonly air: readonly (keyof LeakAir)[];
  readonly words: RestrictionWords<R>;
  /** what to know outside the range of its sources, at Δp [Pa]; null: nothing */
  readonly notes: ((restriction: R, air: LeakAir, pressure: number) => readonly Note[]) | null;
}

/** Half-width of the difference that a slope is taken over, relative to Δp [-]. */
const SLOPE_STEP = 1e-5;

/** @returns dQ/dΔp by a central difference, for laws whose slope has no short form [m³/(s·Pa)] */
export function slopeByDifference<R>(flow: RestrictionLaw<R>["flow"]): RestrictionLaw<R>["slope"] {
  return (restriction, air, pressure) => {
    const step = SLOPE_STEP * pressure;
    return (flow(restriction, air, pressure + step) - flow(restriction, air, pressure - step)) / (2 * step);
  };
}
