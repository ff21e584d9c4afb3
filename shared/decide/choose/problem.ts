import type { Weather } from "../../physics/air.ts";
import type { MotorInput, RotorInput, SupplyInput } from "../../physics/point/machine.ts";
import type { VehicleInput } from "../../physics/predict.ts";
import type { PropellerInput } from "../../physics/propellerLaw.ts";
import type { CellInput } from "../../physics/rundown.ts";
import type { SkirtInput } from "../../physics/skirt.ts";
import type { JointsUnder } from "../joints/crossed.ts";

/** A thing that weighs, takes room and costs. */
export interface Part {
  readonly id: string;
  /** [kg] */
  readonly mass: number;
  /** its share of the stack [m]; 0 unless given */
  readonly height?: number;
  /** in the user's own money; 0 unless given [-] */
  readonly price?: number;
  /** what it adds to the lower worst case of each stack of {@link Problem.fixed} [m]; null: not known; nothing unless given */
  readonly stacked?: readonly (number | null)[];
}

export interface TriedMotor extends Part, Omit<MotorInput, "windingTemperature"> {
  /** of the winding [K]; null or absent: the wanted one alone */
  readonly windingLimit?: number | null;
  /** of the winding, by its maker [A] */
  readonly maxCurrent?: number | null;
  /** [V] */
  readonly ratedVoltage?: number | null;
}

/** What a rotor's curve rests on. */
export type RotorBasis = "measured" | "two-point" | "estimated";

/** One size of a family. */
export interface FamilySize {
  /** D [m] */
  readonly diameter: number;
  /** [kg] */
  readonly mass: number;
  /** [m]; 0 unless given */
  readonly height?: number;
  readonly price?: number;
  readonly stacked?: Part["stacked"];
}

/** One size of a rotor in a duct. */
export interface RotorSize extends FamilySize {
  /** ω at which it reaches its strength [rad/s]; null: not known */
  readonly burstSpeed: number | null;
}

/** A family of rotors or propellers, at the sizes that are tried. */
export interface Family {
  readonly id: string;
  readonly basis: RotorBasis;
  /** sizes that were tested, for the trust in a scaled one [m]; none: estimated */
  readonly testedDiameters: readonly number[];
  /** tip speeds of those tests, least and greatest [m/s]; null: not known */
  readonly testedTipSpeeds: readonly [number, number] | null;
  readonly sizes: readonly FamilySize[];
}

export interface TriedRotor extends Family, Omit<RotorInput, "diameter"> {
  readonly sizes: readonly RotorSize[];
}

/** A family of open propellers: their thrust stands in the place of a cavity's pull. */
export interface TriedPropeller extends Family, Omit<PropellerInput, "kind" | "diameter" | "chord"> {
  /** at 75 % of the radius, over the diameter [-] */
  readonly chordRatio: number;
}

export interface TriedPack extends Part {
  readonly series: number;
  readonly parallel: number;
  /** [Ω] */
  readonly wireResistance: number;
  readonly cell: CellInput;
}

export interface TriedSkirt extends Part, Omit<SkirtInput, "gap"> {
  /** σ_s: share of the normal force that it carries [-] */
  readonly share: number;
  /** μ_w of the wheels on the surface, as the tests with this skirt tell it [-] */
  readonly wheelFriction: number;
  /** μ_s of the skirt on the surface [-] */
  readonly skirtFriction: number;
  /** κ of the skirt on the surface, as its pulls tell it; 1 unless given [-] */
  readonly pullFactor?: number;
  /** stand-offs [m] */
  readonly gaps: readonly number[];
  /** of the surface, with the length of this lip over one; none unless given */
  readonly joints?: JointsUnder | null;
}

/** What a vehicle under an open propeller stands on: a skirt that rubs with its share of the load, or its wheels alone. */
export interface TriedStand extends Omit<Part, "id"> {
  /** of the skirt; null: none */
  readonly id: string | null;
  /** σ_s [-] */
  readonly share: number;
  /** μ_w of the wheels on the surface [-] */
  readonly wheelFriction: number;
  /** μ_s of the skirt on the surface [-] */
  readonly skirtFriction: number;
  /** the surface has joints to cross, which change nothing of a thrust */
  readonly crosses?: boolean;
}

/** One attitude that must hold. */
export interface WantedAttitude {
  /** θ [°]; "worst": the angle that needs most */
  readonly angle: number | "worst";
  readonly mode: "parked" | "driving";
}

/** What must hold; a limit that is absent or null is not asked for. */
export interface Wants {
  readonly attitudes: readonly WantedAttitude[];
  /** least F_s/F_required on each of them [-] */
  readonly targetMargin: number;
  /** the same while it crosses each joint of the surface, at least [-] */
  readonly leastCrossing?: number | null;
  /** run to the end of the cell, at least [s] */
  readonly leastTime?: number | null;
  /** a controller keeps the target margin on all of the attitudes, at least [s]; 0: however long it does, to rank by it; not found unless given */
  readonly leastKeptTime?: number | null;
  /** how long a combination runs is not asked for, whatever limits it keeps */
  readonly untimed?: boolean;
  /** [K] */
  readonly mostWinding?: number | null;
  /** burst speed over speed, at least [-]; an open propeller's isn't worked out, so it isn't judged by it */
  readonly leastRotorFactor?: number | null;
  /** of the stack [m] */
  readonly mostHeight?: number | null;
  readonly mostPrice?: number | null;
  /** every stack of the housing closes at its worst case */
  readonly closes?: boolean;
  /** keep to the makers' motor current, motor voltage and cell current where they are known */
  readonly ratings?: boolean;
  /** P(hold) of every wanted attitude; sampled for a shortlist alone, never for all [-] */
  readonly leastChance?: number | null;
}

/** A question to the engine: plain SI numbers, fit to be sent to a worker. */
export interface Problem {
  readonly fixed: {
    readonly air: Weather;
    /** mass: the vehicle without motor, rotor, pack and skirt */
    readonly vehicle: Omit<VehicleInput, "skirtShare" | "wheelFriction" | "skirtFriction" | "pullFactor">;
    readonly supply: Omit<SupplyInput, "duty">;
    /** z at which every combination is solved and its run begins [-] */
    readonly charge: number;
    /** height of all that stands in the stack beside the parts to try [m] */
    readonly height: number;
    readonly price: number;
    /** lower worst case of each stack of the housing without the parts to try [m]; no stacks unless given */
    readonly stacks?: readonly number[];
  };
  readonly motors: readonly TriedMotor[];
  readonly rotors: readonly TriedRotor[];
  /** with every stand, where a rotor in a duct is tried with every skirt; none unless given */
  readonly propellers?: readonly TriedPropeller[];
  readonly packs: readonly TriedPack[];
  readonly skirts: readonly TriedSkirt[];
  /** what propellers are tried with; none unless given */
  readonly stands?: readonly TriedStand[];
  /** δ [-] */
  readonly duties: readonly number[];
  readonly wants: Wants;
}

/** @returns every rotor at every size, those of propellers last, in the order in which combinations count them */
export function sizesIn({ rotors, propellers = [] }: Problem): FamilySize[] {
  return [...rotors, ...propellers].flatMap(({ sizes }) => sizes);
}

/** @returns what stands under every combination, a skirt once for each of its gaps, in the order in which combinations count them */
export function skirtsIn({ skirts, stands = [] }: Problem): (TriedSkirt | TriedStand)[] {
  return [...skirts.flatMap((skirt) => skirt.gaps.map(() => skirt)), ...stands];
}
