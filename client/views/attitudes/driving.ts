import { type Drive, driveLoad, driveTorque } from "../../../shared/physics/hold/drive.ts";
import type { Rose } from "./rose.ts";

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

export interface DriveAnswer {
  /** where the wheels grip worst */
  readonly atWorst: Load;
  /** where the motors work hardest, by whole degrees */
  readonly hardest: Load;
  /** turns of the motor per turn of the wheel at which the hardest takes half of the stall torque */
  readonly enoughRatio: number;
}

/** Half of the stall torque: above it a drive is flagged. Common practice, no source. */
const WANTED_SHARE = 0.5;

/**
 * What climbing asks of the drive.
 *
 * @param rose - vehicle, pull and attitudes
 * @param drive - wheels, motors, gear
 * @param stall - stall torque of one motor at its shaft [N·m], > 0
 * @returns loads at the worst climbing attitude and at the one that takes most torque, and the gear ratio that would do
 * @throws {OutOfRangeError} on a drive that can't be
 */
export function driveAnswer({ input, made, worst, stands }: Rose, drive: Drive, stall: number): DriveAnswer {
  const at = (angle: number): Load => {
    const torque = Math.max(0, driveTorque(input.vehicle, made, angle, drive));
    return { angle, torque, ...driveLoad(torque, stall) };
  };
  const loads = stands.map((stand) => at(stand.angle));
  const hardest = loads.reduce((most, load) => (load.torque > most.torque ? load : most));
  return {
    atWorst: at(worst.driving.angle),
    hardest,
    enoughRatio: (drive.gearRatio * hardest.share) / WANTED_SHARE,
  };
}
