import { OutOfRangeError, requireNonNegative, requirePositive } from "../../numeric/errors.ts";
import { cosineOfDegrees, sineOfDegrees } from "./angle.ts";
import { checkVehicle, type Vehicle, vehicleWeight } from "./vehicle.ts";

export interface Drive {
  /** [m] */
  readonly wheelRadius: number;
  /** drive motors that share the load [-] */
  readonly motors: number;
  /** i: turns of the motor per turn of the wheel [-] */
  readonly gearRatio: number;
  /** 0…1 [-] */
  readonly gearEfficiency: number;
}

/** Share of the stall torque above which a drive is flagged. Common practice, no source. */
const FLAGGED_SHARE = 0.5;

/**
 * Torque that each drive motor must give to climb.
 *
 *     M = (W sin θ + [c_rr(1 − σ_s) + μ_s·σ_s]·N)·r_w/(n·i·η),  N = F_s + W cos θ
 *
 * @param vehicle - every field in SI units [-]
 * @param suction - F_s [N], ≥ 0
 * @param angleDegrees - θ of the surface [°]
 * @param drive - wheel radius [m], motors, gear ratio and efficiency [-]
 * @returns torque at each motor's shaft [N·m]; where the vehicle has lifted off (N < 0) its resistance is 0
 * @throws {OutOfRangeError} on a vehicle that can't be, a negative suction, a drive number that is not above 0, an efficiency above 1
 *
 * Valid at a steady crawl, nose uphill. Source: statics; docs/method/holding.md
 */
export function driveTorque(vehicle: Vehicle, suction: number, angleDegrees: number, drive: Drive): number {
  checkVehicle(vehicle);
  checkDrive(drive);
  const weight = vehicleWeight(vehicle);
  const normal = requireNonNegative("suction", suction) + weight * cosineOfDegrees(angleDegrees);
  const { rollingResistance, skirtFriction, skirtShare } = vehicle;
  const drag = (rollingResistance * (1 - skirtShare) + skirtFriction * skirtShare) * Math.max(0, normal);
  const force = weight * sineOfDegrees(angleDegrees) + drag;
  return (force * drive.wheelRadius) / (drive.motors * drive.gearRatio * drive.gearEfficiency);
}

/**
 * How hard a drive motor works against its stall torque.
 *
 *     share = M/M_stall, flagged above ½
 *
 * @param torque - M at the shaft [N·m], ≥ 0
 * @param stall - M_stall at the pack's loaded voltage [N·m], > 0
 * @returns share [-] and whether it is flagged [-]
 * @throws {OutOfRangeError} on a negative torque, a stall torque that is not above 0
 *
 * Valid for DC gear motors. Source: common practice, no source
 */
export function driveLoad(
  torque: number,
  stall: number,
): { readonly share: number; readonly flagged: boolean } {
  const share = requireNonNegative("drive.torque", torque) / requirePositive("drive.stallTorque", stall);
  return { share, flagged: share > FLAGGED_SHARE };
}

function checkDrive(drive: Drive): void {
  requirePositive("drive.wheelRadius", drive.wheelRadius);
  requirePositive("drive.motors", drive.motors);
  requirePositive("drive.gearRatio", drive.gearRatio);
  if (!(drive.gearEfficiency > 0 && drive.gearEfficiency <= 1))
    throw new OutOfRangeError("drive.gearEfficiency", drive.gearEfficiency, "above 0, up to 1");
}
