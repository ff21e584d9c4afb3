import type { Weather } from "../air.ts";
import type { RotorInput } from "../point/machine.ts";
import type { PredictInput, VehicleInput } from "../predict.ts";
import type { PropellerPredictInput } from "../propeller.ts";
import type { PropellerInput } from "../propellerLaw.ts";
import type { SkirtInput } from "../skirt.ts";

/** A vehicle whose wheels' friction may be unknown: null. */
export type PartialVehicle = Omit<VehicleInput, "wheelFriction"> & { readonly wheelFriction: number | null };

/** A motor on a pack turns it: all but the friction of the wheels is a number. */
export interface Coupled {
  readonly turnedBy: "motor";
  readonly machine: Omit<PredictInput, "vehicle"> | Omit<PropellerPredictInput, "vehicle">;
}

/** What the motor makes of it isn't known: the rotor is asked at the speeds of its tests. */
export interface AtSpeeds {
  readonly turnedBy: "tests";
  /** ω, rising [rad/s], > 0 */
  readonly speeds: readonly number[];
  readonly air: Weather;
  readonly rotor:
    | {
        readonly kind: "ducted";
        readonly curve: Omit<RotorInput, "lambda" | "sizeCorrection">;
        readonly skirt: SkirtInput;
      }
    | { readonly kind: "propeller"; readonly curve: Omit<PropellerInput, "power"> };
}

/** What is known of a build of which something isn't, all SI. */
export interface PartialInput {
  readonly blower: Coupled | AtSpeeds;
  readonly vehicle: PartialVehicle;
}
