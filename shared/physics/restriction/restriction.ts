import { holesLaw } from "./hole.ts";
import { honeycombLaw } from "./honeycomb.ts";
import { jointLaw } from "./joint.ts";
import type { RestrictionLaw } from "./law.ts";
import { lipGapLaw } from "./lipGap.ts";
import { measuredLeakLaw } from "./measuredLeak.ts";
import { openingLaw } from "./opening.ts";

/** Every kind of restriction, and all that it says of itself. */
export const RESTRICTIONS = {
  lipGap: lipGapLaw,
  joint: jointLaw,
  measuredLeak: measuredLeakLaw,
  opening: openingLaw,
  holes: holesLaw,
  honeycomb: honeycombLaw,
} as const;

export type RestrictionKind = keyof typeof RESTRICTIONS;
type NumbersOf<L> = L extends RestrictionLaw<infer R> ? R : never;

/** One path of the air, by its kind. */
export type Restriction = {
  [K in RestrictionKind]: { readonly kind: K } & NumbersOf<(typeof RESTRICTIONS)[K]>;
}[RestrictionKind];

/** @returns what the restriction's own kind says of it */
export function lawOf<R extends Restriction>(restriction: R): RestrictionLaw<R> {
  return RESTRICTIONS[restriction.kind] as unknown as RestrictionLaw<R>;
}
