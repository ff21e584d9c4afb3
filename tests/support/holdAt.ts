import { type Hold, holdOf } from "#shared/physics/hold/holdAt.ts";
import { compileHold } from "#shared/physics/hold/law.ts";
import type { Vehicle } from "#shared/physics/hold/vehicle.ts";

/** @returns how a vehicle holds on one attitude with a suction [N], its margins and the suction that each mode needs */
export const holdAt = (vehicle: Vehicle, suction: number, angle: number): Hold =>
  holdOf(compileHold(vehicle), suction, angle);
