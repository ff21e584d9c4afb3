import { OutOfRangeError, requireFinite, requireNonNegative, requirePositive } from "../../numeric/errors.ts";
import { STANDARD_GRAVITY } from "../constants.ts";
import type { Note } from "../note.ts";

export interface Vehicle {
  /** all that it carries included [kg] */
  readonly mass: number;
  /** μ_w of the wheels on the surface [-] */
  readonly wheelFriction: number;
  /** μ_s of the skirt on the surface [-] */
  readonly skirtFriction: number;
  /** σ_s: share of the normal force that the skirt carries, 0…1 [-] */
  readonly skirtShare: number;
  /** c_rr of the wheels [-] */
  readonly rollingResistance: number;
  readonly driven: "both" | "front" | "rear";
  /** between the axle lines [m] */
  readonly wheelbase: number;
  /** between left and right wheels [m] */
  readonly track: number;
  /** of the centre of gravity above the surface [m] */
  readonly cgHeight: number;
  /** of the centre of gravity ahead of the rear axle line [m] */
  readonly cgFromRear: number;
  /** of the suction's centroid ahead of the rear axle line [m] */
  readonly suctionFromRear: number;
  /** accelerations on top of gravity, in g: W = m·g·(1 + jolt) [-] */
  readonly jolt: number;
}

/** Beyond these a value is possible, but odd. Common practice, no source. */
const ODD = { friction: 1.5, slippery: 0.1, rolling: 0.3, jolt: 3 } as const;

/**
 * Weight of the vehicle, jolts included.
 *
 *     W = m·g·(1 + jolt)
 *
 * @param vehicle - mass [kg], jolt [-]
 * @returns W [N]
 *
 * Valid for jolts that act along gravity. Source: Newton's second law
 */
export function vehicleWeight(vehicle: Pick<Vehicle, "mass" | "jolt">): number {
  return vehicle.mass * STANDARD_GRAVITY * (1 + vehicle.jolt);
}

/**
 * Stops at a vehicle that can't exist.
 *
 *     mass, wheelbase, track > 0; frictions, resistance, height, jolt ≥ 0; 0 ≤ σ_s ≤ 1
 *
 * @param vehicle - every field in SI units [-]
 * @returns the vehicle itself [-]
 * @throws {OutOfRangeError} with the path of the field ("vehicle.mass")
 *
 * Valid for any vehicle. Source: geometry
 */
export function checkVehicle(vehicle: Vehicle): Vehicle {
  requirePositive("vehicle.mass", vehicle.mass);
  requireNonNegative("vehicle.wheelFriction", vehicle.wheelFriction);
  requireNonNegative("vehicle.skirtFriction", vehicle.skirtFriction);
  if (!(vehicle.skirtShare >= 0 && vehicle.skirtShare <= 1))
    throw new OutOfRangeError("vehicle.skirtShare", vehicle.skirtShare, "0 to 1");
  requireNonNegative("vehicle.rollingResistance", vehicle.rollingResistance);
  requirePositive("vehicle.wheelbase", vehicle.wheelbase);
  requirePositive("vehicle.track", vehicle.track);
  requireNonNegative("vehicle.cgHeight", vehicle.cgHeight);
  requireFinite("vehicle.cgFromRear", vehicle.cgFromRear);
  requireFinite("vehicle.suctionFromRear", vehicle.suctionFromRear);
  requireNonNegative("vehicle.jolt", vehicle.jolt);
  return vehicle;
}

/**
 * What is possible about a vehicle, but odd enough to look at again.
 *
 *     μ > 1.5, μ_w < 0.1, c_rr > 0.3, jolt > 3, σ_s = 1, centres outside the wheelbase, tall centre of gravity
 *
 * @param vehicle - every field in SI units [-]
 * @returns the notes, none on a usual vehicle [-]
 * @throws {OutOfRangeError} as {@link checkVehicle}
 *
 * Valid for any vehicle. Source: common practice, no source
 */
export function vehicleNotes(vehicle: Vehicle): Note[] {
  checkVehicle(vehicle);
  return [...frictionNotes(vehicle), ...geometryNotes(vehicle)];
}

function frictionNotes(vehicle: Vehicle): Note[] {
  const notes: Note[] = [];
  if (vehicle.wheelFriction > ODD.friction)
    notes.push({
      code: "wheel-friction-high",
      message: `A wheel friction of ${vehicle.wheelFriction} is unusual: check the tilt-board test.`,
    });
  if (vehicle.wheelFriction < ODD.slippery)
    notes.push({
      code: "wheel-friction-low",
      message: `A wheel friction of ${vehicle.wheelFriction} is less than that of ice: check the tilt-board test.`,
    });
  if (vehicle.skirtFriction > ODD.friction)
    notes.push({
      code: "skirt-friction-high",
      message: `A skirt friction of ${vehicle.skirtFriction} is unusual: check the tilt-board test.`,
    });
  if (vehicle.rollingResistance > ODD.rolling)
    notes.push({
      code: "rolling-resistance-high",
      message: `A rolling resistance of ${vehicle.rollingResistance} is that of a dragging wheel.`,
    });
  if (vehicle.skirtShare === 1)
    notes.push({ code: "wheels-unloaded", message: "The skirt carries everything: the wheels can't drive." });
  if (vehicle.jolt > ODD.jolt)
    notes.push({ code: "jolt-high", message: `A jolt of ${vehicle.jolt} g is that of a hard blow.` });
  return notes;
}

function geometryNotes(vehicle: Vehicle): Note[] {
  const { wheelbase, track, cgHeight, cgFromRear, suctionFromRear } = vehicle;
  const notes: Note[] = [];
  if (cgFromRear < 0 || cgFromRear > wheelbase)
    notes.push({
      code: "cg-outside-wheelbase",
      message: "The centre of gravity lies outside the axles: the vehicle tips over on a floor.",
    });
  if (suctionFromRear <= 0 || suctionFromRear >= wheelbase)
    notes.push({
      code: "suction-outside-wheelbase",
      message: "The suction pulls on or outside an axle line: no suction keeps the other axle loaded.",
    });
  if (cgHeight > Math.min(wheelbase, track))
    notes.push({
      code: "cg-high",
      message: "The centre of gravity lies higher than the wheels are apart: check its height.",
    });
  return notes;
}
