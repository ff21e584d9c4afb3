import { OutOfRangeError, requireNonNegative } from "../numeric/errors.ts";
import type { Holes } from "./restriction/hole.ts";
import type { Honeycomb } from "./restriction/honeycomb.ts";
import type { LeakAir } from "./restriction/law.ts";
import type { Leak } from "./restriction/leak.ts";
import { EDGE_LOSS, type LipGap } from "./restriction/lipGap.ts";
import { leakCoefficientAt, type MeasuredLeak } from "./restriction/measuredLeak.ts";
import type { Opening } from "./restriction/opening.ts";
import type { Restriction } from "./restriction/restriction.ts";

/** A joint of the surface under part of the lip. */
export interface SkirtJoint {
  /** length of lip that stands over it [m] */
  readonly span: number;
  /** how far the surface lies lower there [m] */
  readonly depth: number;
}

export interface SkirtInput {
  /** of the lip [m] */
  readonly perimeter: number;
  /** inside the lip [m²] */
  readonly area: number;
  /** stand-off as set [m] */
  readonly gap: number;
  /** the surface's roughness allowance [m] */
  readonly roughness: number;
  /** lip width along the flow [m] */
  readonly land: number;
  readonly edge?: keyof typeof EDGE_LOSS;
  /** in the edge's place [-] */
  readonly lossSum?: number;
  /** on the friction along the lip's width, 1 unless given [-] */
  readonly landFriction?: number;
  readonly openings: readonly Opening[];
  /** drilled through the skirt or the cover; none unless given */
  readonly holes?: readonly Holes[];
  /** grilles and flow straighteners; none unless given */
  readonly honeycombs?: readonly Honeycomb[];
  /** null or absent: the whole lip stands on the surface */
  readonly joint?: SkirtJoint | null;
  /** in the gap's place */
  readonly measuredLeak: MeasuredLeak | null;
}

/** All of a skirt but the area that it pulls on: what its leak is made of. */
export type LeakingSkirt = Omit<SkirtInput, "area">;

/** A restriction, and the numbers of a build that make it, by path. */
interface SkirtPart {
  readonly restriction: Restriction;
  readonly from: () => readonly string[];
}

const LIP = ["gap", "roughness", "perimeter", "land", "lossSum", "landFriction"].map(
  (name) => `skirt.${name}`,
);

function jointUnder({ joint, perimeter }: LeakingSkirt): SkirtJoint | null {
  if (!joint) return null;
  requireNonNegative("skirt.joint.depth", joint.depth);
  if (!(joint.span >= 0 && joint.span <= perimeter))
    throw new OutOfRangeError("skirt.joint.span", joint.span, `0 up to the perimeter, ${perimeter}`);
  return joint.span > 0 && joint.depth > 0 ? joint : null;
}

/** The lip where it stands on the surface: as measured, or by the gap's law. */
function onSurface({ measuredLeak }: LeakingSkirt, lip: LipGap, whole: number, air: LeakAir): SkirtPart[] {
  const { perimeter } = lip;
  if (!(perimeter > 0) && perimeter < whole) return [];
  if (!measuredLeak) return [{ restriction: { kind: "lipGap", ...lip }, from: () => LIP }];
  const { density, viscosity } = air;
  const coefficient = leakCoefficientAt(measuredLeak, air) * (perimeter / whole);
  const { exponent } = measuredLeak;
  const restriction = { kind: "measuredLeak", coefficient, exponent, density, viscosity, perimeter } as const;
  return [{ restriction, from: () => ["skirt.measuredLeak.coefficient"] }];
}

function lipParts(skirt: LeakingSkirt, air: LeakAir): SkirtPart[] {
  const { perimeter } = skirt;
  // f and ℓ enter the lip's law as their product alone
  const land = skirt.land * (skirt.landFriction ?? 1);
  const lossSum = skirt.lossSum ?? EDGE_LOSS[skirt.edge ?? "square"];
  const lip = { perimeter, height: skirt.gap + skirt.roughness, land, lossSum };
  const joint = jointUnder(skirt);
  if (!joint) return onSurface(skirt, lip, perimeter, air);
  const { span, depth } = joint;
  return [
    ...onSurface(skirt, { ...lip, perimeter: perimeter - span }, perimeter, air),
    {
      restriction: { kind: "joint", ...lip, perimeter: span, depth },
      from: () => [...LIP, "skirt.joint.span", "skirt.joint.depth"],
    },
  ];
}

/** Parts of one list of the skirt, each made of some of its own numbers. */
function listed<K extends "openings" | "holes" | "honeycombs">(
  list: K,
  each: SkirtInput[K],
  names: readonly string[],
  restrictionOf: (one: NonNullable<SkirtInput[K]>[number]) => Restriction,
): SkirtPart[] {
  return (each ?? []).map((one, i) => ({
    restriction: restrictionOf(one),
    from: () => names.map((name) => `skirt.${list}.${i}.${name}`),
  }));
}

function skirtParts(skirt: LeakingSkirt, air: LeakAir): SkirtPart[] {
  return [
    ...lipParts(skirt, air),
    ...listed("openings", skirt.openings, ["area"], (one) => ({ kind: "opening", ...one })),
    ...listed("holes", skirt.holes, ["diameter", "thickness"], (one) => ({ kind: "holes", ...one })),
    ...listed("honeycombs", skirt.honeycombs, ["diameter", "length"], (one) => ({
      kind: "honeycomb",
      ...one,
    })),
  ];
}

/**
 * Everything that leaks under and through a skirt.
 *
 *     lip: h = h_set + h_rough, K by the edge or as given, f times its factor, or the measured leak in its place;  over a joint P − s at h and s at h + d;  openings, holes, honeycombs beside
 *
 * @param skirt - lengths [m], areas [m²], losses [-], SI
 * @param air - density [kg/m³], viscosity [Pa·s]; a measured leak is moved to it
 * @returns the restrictions, SI
 * @throws {OutOfRangeError} on a joint deeper than nothing or longer than the lip can be, a measured leak that can't be
 *
 * Valid as its parts. Source: docs/method/restriction.md
 */
export function skirtLeak(skirt: LeakingSkirt, air: LeakAir): Leak {
  return skirtParts(skirt, air).map(({ restriction }) => restriction);
}

/**
 * The skirt with its lip standing off otherwise.
 *
 *     h_set → h;  a measured leak goes with it, C_L ∝ (h + h_rough)^(4x−1)
 *
 * @param skirt - at the gap as set, SI
 * @param gap - h [m], ≥ 0
 * @returns the skirt at that gap; a measured leak at a gap of 0 stays as it is, since nothing says how it goes on
 * @throws {OutOfRangeError} on a gap below 0
 *
 * Valid next to the gap of the leak test. Source: Δp = aQ² + bQ with a ∝ h^−2, b ∝ h^−3 at the exponent x; docs/method/restriction.md
 */
export function skirtAtGap(skirt: SkirtInput, gap: number): SkirtInput {
  requireNonNegative("skirt.gap", gap);
  const { measuredLeak, roughness } = skirt;
  const [before, now] = [skirt.gap + roughness, gap + roughness];
  if (!measuredLeak || now === before || before === 0) return { ...skirt, gap };
  if (now === 0) return { ...skirt, gap, measuredLeak: null };
  const coefficient = measuredLeak.coefficient * (now / before) ** (4 * measuredLeak.exponent - 1);
  return { ...skirt, gap, measuredLeak: { ...measuredLeak, coefficient } };
}

/** @returns the skirt with all that leaks beside its lip taped over, as for a leak test */
export function taped(skirt: SkirtInput): SkirtInput {
  return { ...skirt, openings: [], holes: [], honeycombs: [] };
}

/** @returns paths of the numbers that the leak of a skirt is made of ("skirt.gap") */
export function leakNumbers(skirt: LeakingSkirt, air: LeakAir): string[] {
  return [...new Set(skirtParts(skirt, air).flatMap(({ from }) => from()))];
}
