import { cosineOfDegrees, sineOfDegrees } from "../../physics/hold/angle.ts";
import {
  CONDITION_COUNT,
  CONDITIONS,
  compileHold,
  type HoldLaw,
  marginOver,
  NUMBERS_PER_CONDITION,
  neededSuction,
} from "../../physics/hold/law.ts";
import type { Vehicle } from "../../physics/hold/vehicle.ts";
import { worstAttitude } from "../../physics/hold/worst.ts";
import type { WantedAttitude } from "./problem.ts";

const COUNTS = { parked: CONDITIONS.tip[1], driving: CONDITION_COUNT } as const;

/** Wanted attitudes of one mode, for vehicles that differ in mass alone. */
export interface HoldNeeds {
  /** suction per mass that the conditions with a > 0 need [N/kg]; 0 where none is wanted or needed */
  readonly perMass: number;
  /** conditions that no suction helps: a [-] and what is short per mass [N/kg], in pairs */
  readonly helpless: Float64Array;
  /** the worst angle depends on the suction: its law per mass, and memory for the law of one mass */
  readonly moving: { readonly unit: HoldLaw; readonly law: HoldLaw; readonly conditions: number } | null;
}

const never = (law: HoldLaw, conditions: number): boolean => {
  for (let i = 0; i < conditions; i++) if (!(law[i * NUMBERS_PER_CONDITION] > 0)) return true;
  return false;
};

function helplessAt(law: HoldLaw, conditions: number, sine: number, cosine: number): number[] {
  return Array.from({ length: conditions }, (_, i) => i * NUMBERS_PER_CONDITION)
    .filter((at) => !(law[at] > 0))
    .flatMap((at) => [law[at], law[at + 2] * sine - law[at + 1] * cosine]);
}

/** The law with its helpless conditions left out: their needs are infinite or none. */
function helped(law: HoldLaw): HoldLaw {
  const copy = law.slice();
  for (let at = 0; at < copy.length; at += NUMBERS_PER_CONDITION)
    if (!(copy[at] > 0)) copy.fill(0, at + 1, at + NUMBERS_PER_CONDITION);
  return copy;
}

/**
 * What the wanted attitudes of one mode need, per mass.
 *
 *     F_required/m: conditions are linear in the weight
 *
 * @param vehicle - of any mass, its skirt's share included, SI
 * @param wanted - attitudes [°]
 * @param mode - parked or driving
 * @returns needs, to be asked by {@link marginOf}
 * @throws {OutOfRangeError} on a vehicle that can't be
 *
 * Valid for combinations that share all but the mass. Source: docs/method/holding.md
 */
export function holdNeeds(
  vehicle: Vehicle,
  wanted: readonly WantedAttitude[],
  mode: WantedAttitude["mode"],
): HoldNeeds {
  const unit = compileHold({ ...vehicle, mass: 1 });
  const conditions = COUNTS[mode];
  const angles = wanted.filter((attitude) => attitude.mode === mode).map(({ angle }) => angle);
  const moves = angles.includes("worst") && never(unit, conditions);
  const fixed = angles
    .filter((angle) => angle !== "worst" || !moves)
    .map((angle) => (angle === "worst" ? worstAttitude(unit, conditions, 0) : angle));
  const turns = fixed.map((angle) => [sineOfDegrees(angle), cosineOfDegrees(angle)] as const);
  const most = helped(unit);
  return {
    perMass: turns.reduce((sum, [s, c]) => Math.max(sum, neededSuction(most, 0, conditions, 0, s, c)), 0),
    helpless: Float64Array.from(turns.flatMap(([s, c]) => helplessAt(unit, conditions, s, c))),
    moving: moves ? { unit, law: new Float64Array(unit.length), conditions } : null,
  };
}

function worstMargin(moving: NonNullable<HoldNeeds["moving"]>, mass: number, suction: number): number {
  const { unit, law, conditions } = moving;
  for (let i = 0; i < law.length; i++) law[i] = i % NUMBERS_PER_CONDITION === 0 ? unit[i] : unit[i] * mass;
  const angle = worstAttitude(law, conditions, suction);
  return marginOver(
    suction,
    neededSuction(law, 0, conditions, suction, sineOfDegrees(angle), cosineOfDegrees(angle)),
  );
}

/** @returns whether a condition that no suction helps is not met: no pull suffices there */
export function isHelpless({ helpless }: HoldNeeds, mass: number, suction: number): boolean {
  for (let i = 0; i < helpless.length; i += 2)
    if (helpless[i] * suction < helpless[i + 1] * mass) return true;
  return false;
}

/**
 * Least margin of a combination over the wanted attitudes of one mode.
 *
 *     F/(m·F_required per mass); 0 where a condition that no suction helps is not met
 *
 * @param needs - from {@link holdNeeds}
 * @param mass - of the combination [kg]
 * @param suction - F_s, ≥ 0 [N]
 * @returns margin [-]; infinite where no suction is needed
 *
 * Valid as {@link holdNeeds}; allocates nothing. Source: as there
 */
export function marginOf(needs: HoldNeeds, mass: number, suction: number): number {
  const { perMass, moving } = needs;
  if (isHelpless(needs, mass, suction)) return 0;
  const margin = marginOver(suction, mass * perMass);
  return moving ? Math.min(margin, worstMargin(moving, mass, suction)) : margin;
}
