import { type Drive, driveLoad, driveTorque } from "../../../shared/physics/hold/drive.ts";
import { holdOf } from "../../../shared/physics/hold/holdAt.ts";
import { compileHold } from "../../../shared/physics/hold/law.ts";
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

/** Attitudes on which the wheels slip, whole degrees, first and last. */
export interface Slips {
  readonly from: number;
  readonly to: number;
}

export interface DriveAnswer {
  /** where climbing needs most pull, by whole degrees */
  readonly atWorst: Load;
  /** where the motors work hardest, by whole degrees */
  readonly hardest: Load;
  /** turns of the motor per turn of the wheel at which the hardest takes half of the stall torque */
  readonly enoughRatio: number;
  /** null: on none */
  readonly slips: Slips | null;
}

/** Half of the stall torque: above it a drive is flagged. Common practice, no source. */
const WANTED_SHARE = 0.5;

interface Climb {
  readonly angle: number;
  /** pull that lets the wheels climb [N] */
  readonly need: number;
}

/** The grip of the wheels alone: pull that climbing needs, degree by degree. */
function climbs({ input, made, stands }: Rose): Climb[] {
  const law = compileHold(input.vehicle);
  return stands.map(({ angle }) => ({ angle, need: holdOf(law, made, angle).required.climb }));
}

/** @returns where the wheels slip, whatever drives them; null where they grip everywhere */
export function slipsOf(rose: Rose): Slips | null {
  const short = climbs(rose).filter((climb) => climb.need > rose.made);
  return short.length > 0 ? { from: short[0].angle, to: short[short.length - 1].angle } : null;
}

/**
 * What climbing asks of the drive.
 *
 * @param rose - vehicle, pull and attitudes
 * @param drive - wheels, motors, gear
 * @param stall - stall torque of one motor at its shaft [N·m], > 0
 * @returns loads at the worst climbing attitude and at the one that takes most torque, and the gear ratio that would do
 * @throws {OutOfRangeError} on a drive that can't be
 */
export function driveAnswer(rose: Rose, drive: Drive, stall: number): DriveAnswer {
  const { input, made, stands } = rose;
  const at = (angle: number): Load => {
    const torque = Math.max(0, driveTorque(input.vehicle, made, angle, drive));
    return { angle, torque, ...driveLoad(torque, stall) };
  };
  const loads = stands.map((stand) => at(stand.angle));
  const hardest = loads.reduce((most, load) => (load.torque > most.torque ? load : most));
  const worst = climbs(rose).reduce((most, climb) => (climb.need > most.need ? climb : most));
  return {
    atWorst: at(worst.angle),
    hardest,
    enoughRatio: (drive.gearRatio * hardest.share) / WANTED_SHARE,
    slips: slipsOf(rose),
  };
}
