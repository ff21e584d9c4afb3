import type { Weather } from "../../physics/air.ts";
import type { VehicleInput } from "../../physics/assembly.ts";
import type { PackInput, RotorInput, SupplyInput } from "../../physics/point/machine.ts";
import type { PropellerInput } from "../../physics/propellerLaw.ts";
import type { CellInput } from "../../physics/rundown.ts";
import type { SkirtInput } from "../../physics/skirt.ts";
import type { MotorLimits, RotorBody } from "../limits/input.ts";
import type { CellAllows } from "../verdict/inlineCase.ts";

/** How strong a motor is, whatever it is wound for. */
export interface MotorFrame {
  /** K_m = k_t/√R₂₀ [N·m/√W] */
  readonly motorConstant: number;
  /** M_c [N·m] */
  readonly frictionTorque: number;
  /** M_v [N·m·s/rad] */
  readonly viscousTorque: number;
  /** R_th; null: winding taken cold [K/W] */
  readonly thermalResistance: number | null;
}

/** What of a build stays as it is while its rotor's size and its motor's winding are looked for. */
export interface SizeBuild {
  readonly air: Weather;
  /** the family at its reference diameter, to which chord and blades belong */
  readonly rotor: RotorInput | PropellerInput;
  /** the family at another diameter [m], where its size correction changes with it; the same curve unless given */
  readonly rotorAt?: (diameter: number) => RotorInput | PropellerInput;
  readonly motor: MotorFrame;
  /** at the voltage that the pull is wanted at */
  readonly pack: PackInput;
  readonly supply: SupplyInput;
  /** null with an open propeller */
  readonly skirt: SkirtInput | null;
  readonly vehicle: VehicleInput;
}

/** What its makers allow, and the cell, as far as known. */
export interface SizeAllows {
  readonly motor: MotorLimits;
  readonly cell: CellAllows;
  /** at the family's reference diameter; null: not known */
  readonly rotor: RotorBody | null;
}

/** A margin that is wanted on an attitude. */
export interface WantedHold {
  /** θ [°], or the vehicle's own worst */
  readonly angle: number | "worst";
  /** [-] */
  readonly margin: number;
  readonly mode: "parked" | "driving";
}

/** A pull [N], or a margin on an attitude. */
export type Need = { readonly pull: number } | { readonly hold: WantedHold };

export interface SizeQuestion {
  readonly build: SizeBuild;
  readonly allows: SizeAllows;
  readonly need: Need;
  /** for how long it does so; null: not known */
  readonly cell: CellInput | null;
}
