import type { Fluid } from "../air.ts";
import type { RestrictionLaw } from "./law.ts";
import { type LipGap, lipGapLaw } from "./lipGap.ts";

/** A stretch of the lip that stands over a joint of the surface: a groove, a step, a glazing bar. */
export interface Joint extends LipGap {
  /** how far the surface lies lower there, d [m] */
  readonly depth: number;
}

/** The lip as it stands over the joint. */
const over = (joint: Joint): LipGap => ({ ...joint, height: joint.height + joint.depth });

/**
 * Volume flow under the stretch of a lip that stands over a joint.
 *
 *     the lip gap's law over the span s at h + d
 *
 * @param joint - span, height over the surface, depth, land [m]; loss sum [-]
 * @param air - density [kg/m³], viscosity [Pa·s]
 * @param pressure - Δp across the lip [Pa], ≥ 0
 * @returns flow Q [m³/s]
 * @throws {OutOfRangeError} as {@link gapFlow}
 *
 * Valid as {@link gapFlow}, for a joint wider than the lip. Source: docs/method/restriction.md
 */
export function jointFlow(joint: Joint, air: Fluid, pressure: number): number {
  return lipGapLaw.flow(over(joint), air, pressure);
}

/** The lip over a joint, as a restriction. */
export const jointLaw: RestrictionLaw<Joint> = {
  flow: jointFlow,
  slope: (joint, air, pressure) => lipGapLaw.slope(over(joint), air, pressure),
  isOpen: (joint) => lipGapLaw.isOpen(over(joint)),
  underLip: {
    length: ({ perimeter }) => perimeter,
    frictionDrop: (joint, air, pressure) =>
      lipGapLaw.underLip?.frictionDrop(over(joint), air, pressure) ?? null,
    shareWords: () => "σ = 1 − ½Δp_friction/Δp over the joint",
  },
  air: lipGapLaw.air,
  words: {
    name: "lip over a joint",
    equation: `${lipGapLaw.words.equation},  h = h_lip + d,  P = s`,
    numbers: {
      perimeter: ["s", "length of the lip over the joint", "m"],
      height: ["h_lip", "gap and roughness together", "m"],
      depth: ["d", "depth of the joint", "m"],
      land: ["ℓ", "width of the lip", "m"],
      lossSum: ["K", "losses at entry and exit", ""],
    },
    velocity: (joint, air, pressure) =>
      jointFlow(joint, air, pressure) / (joint.perimeter * (joint.height + joint.depth)),
    source: lipGapLaw.words.source,
  },
  notes: null,
};
