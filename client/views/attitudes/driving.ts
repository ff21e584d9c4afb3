import { type Drive, driveLoad, driveTorque } from "../../../shared/physics/hold/drive.ts";
import { holdOf } from "../../../shared/physics/hold/holdAt.ts";
import { compileHold } from "../../../shared/physics/hold/law.ts";
import type { PartialVehicle } from "../../../shared/physics/partial/input.ts";

/** A vehicle and the pull that it is driven with; the friction of its wheels may be unknown. */
export interface Climber {
  readonly vehicle: PartialVehicle;
  /** [N], ≥ 0 */
  readonly made: number;
}

/** What a drive motor does at one attitude. */
export interface Load {
  /** [°] */
  readonly angle: number;
  /** at each motor's shaft [N·m] */
  readonly torque: number;
  /** of the stall torque */
  readonly share: number;
  readonly flagged: boolean;
}

/** Attitudes on which the wheels slip, whole degrees, first and last; "none", or "unknown" without their friction. */
export type Slips = { readonly from: number; readonly to: number } | "none" | "unknown";

export interface DriveAnswer {
  /** where climbing needs most pull, by whole degrees; null where the friction isn't known */
  readonly atWorst: Load | null;
  /** where the motors work hardest, by whole degrees */
  readonly hardest: Load;
  /** turns of the motor per turn of the wheel at which the hardest takes half of the stall torque */
  readonly enoughRatio: number;
  readonly slips: Slips;
}

/** Half of the stall torque: above it a drive is flagged. Common practice, no source. */
const WANTED_SHARE = 0.5;

interface Climb {
  readonly angle: number;
  /** pull that lets the wheels climb [N] */
  readonly need: number;
}

/** Floor over wall to ceiling, degree by degree. */
const ANGLES = Array.from({ length: 181 }, (_, angle) => angle);
/** Stands for a friction that isn't known: the torque to climb hangs on none. */
const UNREAD_FRICTION = 0;

/** The grip of the wheels alone: pull that climbing needs, degree by degree; null without their friction. */
function climbs({ vehicle, made }: Climber): Climb[] | null {
  const { wheelFriction } = vehicle;
  if (wheelFriction === null) return null;
  const law = compileHold({ ...vehicle, wheelFriction });
  return ANGLES.map((angle) => ({ angle, need: holdOf(law, made, angle).required.climb }));
}

/** @returns where the wheels slip, whatever drives them */
export function slipsOf(climber: Climber): Slips {
  const each = climbs(climber);
  if (!each) return "unknown";
  const short = each.filter((climb) => climb.need > climber.made);
  return short.length > 0 ? { from: short[0].angle, to: short[short.length - 1].angle } : "none";
}

/**
 * What climbing asks of the drive.
 *
 * @param climber - vehicle and pull made
 * @param drive - wheels, motors, gear
 * @param stall - stall torque of one motor at its shaft [N·m], > 0
 * @returns loads at the worst climbing attitude and at the one that takes most torque, and the gear ratio that would do
 * @throws {OutOfRangeError} on a drive that can't be
 */
export function driveAnswer(climber: Climber, drive: Drive, stall: number): DriveAnswer {
  const { made } = climber;
  const vehicle = { ...climber.vehicle, wheelFriction: climber.vehicle.wheelFriction ?? UNREAD_FRICTION };
  const at = (angle: number): Load => {
    const torque = Math.max(0, driveTorque(vehicle, made, angle, drive));
    return { angle, torque, ...driveLoad(torque, stall) };
  };
  const loads = ANGLES.map(at);
  const hardest = loads.reduce((most, load) => (load.torque > most.torque ? load : most));
  const worst = climbs(climber)?.reduce((most, climb) => (climb.need > most.need ? climb : most));
  return {
    atWorst: worst ? at(worst.angle) : null,
    hardest,
    enoughRatio: (drive.gearRatio * hardest.share) / WANTED_SHARE,
    slips: slipsOf(climber),
  };
}
