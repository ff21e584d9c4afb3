import type { Weather } from "../../physics/air.ts";
import type { VehicleInput } from "../../physics/assembly.ts";
import type { RotorInput } from "../../physics/point/machine.ts";
import type { PropellerInput } from "../../physics/propellerLaw.ts";
import type { Keep } from "../../physics/rundown/input.ts";
import type { SkirtInput } from "../../physics/skirt.ts";
import { skirtOf } from "./build.ts";
import { dutyOf } from "./duty.ts";
import type { WantedHold } from "./input.ts";
import { pullForHold } from "./need.ts";

/** What of a build says what keeping a margin comes to. */
export interface Keeper {
  readonly air: Weather;
  readonly rotor: RotorInput | PropellerInput;
  readonly vehicle: VehicleInput;
  readonly skirt?: SkirtInput | null;
}

/**
 * What a controller has to keep for a margin on an attitude.
 *
 *     F by {@link pullForHold};  a rotor in a duct: Δp from F_s(Δp) = F;  an open propeller: T = F
 *
 * @param build - vehicle, skirt, air and rotor, SI
 * @param hold - θ [°] or the worst, margin [-], parked or driving
 * @returns Δp [Pa], or T [N]
 * @throws {OutOfRangeError} where nothing is needed there, no pull suffices, or a duct has no skirt
 *
 * Valid for the gap as set. Source: docs/method/run-down.md
 */
export function keepForMargin({ air, rotor, vehicle, skirt = null }: Keeper, hold: WantedHold): Keep {
  const pull = pullForHold(vehicle, hold);
  if ("thrust" in rotor) return { thrust: pull };
  return { pressure: dutyOf({ air, vehicle }, skirtOf({ skirt }), pull).pressure };
}
