import type { SizeBuild, WantedHold } from "../../decide/size/input.ts";
import { type SizeSpread, sizeSpread } from "../../decide/size/spread.ts";
import { isUncertain, type Uncertainties } from "../../decide/uncertainInput.ts";
import type { AnyPredictInput } from "../../physics/predictAny.ts";
import type { Book } from "../book.ts";
import { type BuildUncertainty, buildUncertainty } from "../buildUncertainty.ts";
import { withMass } from "../mass/withMass.ts";
import { resolveBuild, solvable } from "../resolve.ts";
import { correctionAt } from "../testedSizes.ts";
import { type Family, familiesOf } from "./families.ts";
import { type Side, sizeBuild } from "./sides.ts";

/** One family whose sizes are uncertain. */
export interface FamilyAsked {
  /** the whole bench book, with what is typed beside it */
  readonly book: Book;
  readonly side: Pick<Side, "kind" | "build" | "numbers">;
  /** by identifier */
  readonly family: string;
  readonly hold: WantedHold;
  /** [m], rising */
  readonly diameters: readonly number[];
  /** whether a size keeps every limit, one each */
  readonly keeps: readonly boolean[];
  /** 256 unless given */
  readonly samples?: number;
  /** what the family's curve and size law leave uncertain, all else taken as known */
  readonly curveAlone?: boolean;
}

const isCurve = (path: string): boolean => path.startsWith("rotor.");

/** What of the uncertainties belongs to the rotor's curve and its size law. */
function ofCurve({ uncertainty, correlated, shared }: BuildUncertainty): Uncertainties {
  return {
    uncertainty: Object.fromEntries(Object.entries(uncertainty).filter(([path]) => isCurve(path))),
    correlated: correlated.filter(({ paths }) => paths.every(isCurve)),
    shared: shared
      .map(({ name, effects }) => ({ name, effects: effects.filter(({ path }) => isCurve(path)) }))
      .filter(({ effects }) => effects.length > 0),
  };
}

/** As far as its size law is uncertain, so is every size that was not tested. */
function untestedSize({ sizes }: Family, diameters: readonly number[]): number {
  return diameters.find((diameter) => correctionAt(sizes, diameter) !== null) ?? diameters[0];
}

/** The question at the present numbers of a copy: its curve, skirt, vehicle and air in the family's place. */
function sizeAt({ side: { numbers } }: FamilyAsked, family: Family, copy: AnyPredictInput): SizeBuild {
  const { air, vehicle, rotor } = copy;
  const skirt = "skirt" in copy ? copy.skirt : null;
  const there = { ...numbers, air, vehicle, skirt };
  if ("thrust" in rotor) {
    const { thrust, power } = rotor;
    return { ...there, rotor: { ...family.rotor, thrust, power } as SizeBuild["rotor"] };
  }
  const { psi, lambda, sizeCorrection } = rotor;
  const applied = sizeCorrection?.applied;
  const sizes = family.sizes.map((size) => ({ ...size, applied }));
  return sizeBuild(there, { ...family, sizes, rotor: { ...family.rotor, psi, lambda } as Family["rotor"] });
}

/**
 * What is not known of a family, its skirt and its vehicle, carried to the sizes that are looked at.
 *
 *     every uncertainty of the build with that family, {@link buildUncertainty}, but the motor's and the pack's: the winding is what is sought; then {@link sizeSpread}
 *
 * @param asked - book, side, family, need, sizes [m]
 * @returns 5, 50 and 95 % [-, m]; null where nothing is uncertain, or the build has no numbers
 * @throws {OutOfRangeError} {NotEnoughDataError} as its parts
 *
 * Valid as its parts. Source: docs/method/size.md
 */
export function familySpread(asked: FamilyAsked): SizeSpread | null {
  const { book, side, hold, diameters, keeps, samples } = asked;
  const family = familiesOf(book, side.kind, "").families.find(({ id }) => id === asked.family);
  if (!family || diameters.length === 0) return null;
  const base = withMass(book, { ...side.build, rotor: family.id });
  const build = { ...base, diameter: untestedSize(family, diameters) };
  const resolved = resolveBuild(book, build);
  const input = solvable(resolved);
  if (!input) return null;
  const { sources, ...all } = buildUncertainty(book, build, resolved);
  const uncertain = asked.curveAlone ? ofCurve({ sources, ...all }) : all;
  if (!isUncertain(uncertain)) return null;
  const sizeOf = (copy: AnyPredictInput) => sizeAt(asked, family, copy);
  return sizeSpread({ input, uncertain, sizeOf, need: { hold }, diameters, keeps, samples });
}
