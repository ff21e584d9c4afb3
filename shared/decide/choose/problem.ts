import type { Weather } from "../../physics/air.ts";
import type { MotorInput, RotorInput, SupplyInput } from "../../physics/point/machine.ts";
import type { VehicleInput } from "../../physics/predict.ts";
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

export interface AdmittedMotor extends Part, Omit<MotorInput, "windingTemperature"> {
  /** of the winding [K]; null or absent: the wanted one alone */
  readonly windingLimit?: number | null;
  /** of the winding, by its maker [A] */
  readonly maxCurrent?: number | null;
  /** [V] */
  readonly ratedVoltage?: number | null;
}

/** What a rotor's curve rests on. */
export type RotorBasis = "measured" | "two-point" | "estimated";

/** One size of a rotor family. */
export interface RotorSize {
  /** D [m] */
  readonly diameter: number;
  /** [kg] */
  readonly mass: number;
  /** [m]; 0 unless given */
  readonly height?: number;
  readonly price?: number;
  readonly stacked?: Part["stacked"];
  /** ω at which it reaches its strength [rad/s]; null: not known */
  readonly burstSpeed: number | null;
}

export interface AdmittedRotor extends Omit<RotorInput, "diameter"> {
  readonly id: string;
  readonly basis: RotorBasis;
  /** sizes that were tested, for the trust in a scaled one [m]; none: estimated */
  readonly testedDiameters: readonly number[];
  /** tip speeds of those tests, least and greatest [m/s]; null: not known */
  readonly testedTipSpeeds: readonly [number, number] | null;
  readonly sizes: readonly RotorSize[];
}

export interface AdmittedPack extends Part {
  readonly series: number;
  readonly parallel: number;
  /** [Ω] */
  readonly wireResistance: number;
  readonly cell: CellInput;
}

export interface AdmittedSkirt extends Part, Omit<SkirtInput, "gap"> {
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
  /** [K] */
  readonly mostWinding?: number | null;
  /** burst speed over speed, at least [-] */
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
    /** z at which every set is solved and its run begins [-] */
    readonly charge: number;
    /** height of all that stands in the stack beside the admitted parts [m] */
    readonly height: number;
    readonly price: number;
    /** lower worst case of each stack of the housing without the admitted parts [m]; no stacks unless given */
    readonly stacks?: readonly number[];
  };
  readonly motors: readonly AdmittedMotor[];
  readonly rotors: readonly AdmittedRotor[];
  readonly packs: readonly AdmittedPack[];
  readonly skirts: readonly AdmittedSkirt[];
  /** δ [-] */
  readonly duties: readonly number[];
  readonly wants: Wants;
}
