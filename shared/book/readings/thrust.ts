import type { ThrustTest } from "../../model/tests/thrust.ts";
import { type MotorConstants, RPM, shaftTorque } from "../../physics/motor.ts";
import { toSI } from "../../units/quantity.ts";
import { airOfDay, maybe, type Reading } from "./reading.ts";

/** A thrust test's row in SI. */
export interface ThrustReading {
  readonly rpm: number;
  /** towards the surface [N] */
  readonly thrust: number;
  /** [W]; undefined where neither torque nor the current of a known motor gives any */
  readonly shaftPower: number | undefined;
  /** as read [A] */
  readonly current: number | null;
  /** false: the current read is not the motor's */
  readonly fullThrottle: boolean;
  /** where the day's air was read [kg/m³] */
  readonly density: number | undefined;
  /** [m] */
  readonly diameter: number;
}

/** Below full throttle the ammeter in the pack's lead doesn't read the motor's current; a current that leaves no torque says nothing. */
function propellerPower(
  row: ThrustTest["rows"][number],
  speed: number,
  motor: MotorConstants | null,
): number | undefined {
  const current = maybe(row.current, "current");
  const known = motor && current !== undefined && isFullThrottle(row);
  const torque = maybe(row.torque, "torque") ?? (known ? shaftTorque(motor, current, speed) : 0);
  return torque > 0 ? torque * speed : undefined;
}

const isFullThrottle = ({ throttle }: ThrustTest["rows"][number]): boolean =>
  toSI(throttle, "fraction") === 1;

/**
 * A thrust test's rows in SI.
 *
 * @param test - as stored
 * @param motor - constants of the motor that turned it, null where they aren't known
 * @returns rows for {@link fitPropeller}: rpm, thrust [N], shaft power by torque, else by the motor's current [W], density [kg/m³], diameter [m]
 */
export function thrustReadings(test: ThrustTest, motor: MotorConstants | null): Reading<ThrustReading>[] {
  const density = test.air ? airOfDay(test.air).density : undefined;
  const diameter = toSI(test.diameter, "length");
  return test.rows.map((row, index) => {
    const speed = toSI(row.speed, "speed");
    return {
      rpm: speed / RPM,
      thrust: toSI(row.thrust, "load"),
      shaftPower: propellerPower(row, speed, motor),
      current: maybe(row.current, "current") ?? null,
      fullThrottle: isFullThrottle(row),
      density,
      diameter,
      row: index,
      setAside: row.setAside ?? null,
    };
  });
}
