import type { Restriction, RestrictionKind } from "#shared/physics/restriction/restriction.ts";

/** One restriction of every kind, such as a small vehicle may have. A new kind joins here: the compiler asks for it. */
export const RESTRICTION_EXAMPLES = {
  lipGap: { kind: "lipGap", perimeter: 0.25, height: 5e-4, land: 3e-3, lossSum: 1.5 },
  joint: { kind: "joint", perimeter: 0.06, height: 5e-4, depth: 8e-4, land: 3e-3, lossSum: 1.5 },
  measuredLeak: {
    kind: "measuredLeak",
    coefficient: 5e-5,
    exponent: 0.6,
    density: 1.2,
    viscosity: 1.81e-5,
    perimeter: 0.25,
  },
  opening: { kind: "opening", area: 4e-6, dischargeCoefficient: 0.61 },
  holes: { kind: "holes", diameter: 4e-3, thickness: 1e-3, count: 3 },
  honeycomb: { kind: "honeycomb", count: 30, diameter: 1.2e-3, length: 8e-3 },
} as const satisfies { readonly [K in RestrictionKind]: Extract<Restriction, { kind: K }> };
