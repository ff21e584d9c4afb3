import type { ThrustTest } from "../../model/tests/thrust.ts";
import { airFrom } from "../../physics/air.ts";
import { RPM } from "../../physics/motor.ts";
import { predictPropeller } from "../../physics/propeller.ts";
import { thrustAndPower } from "../../physics/propellerLaw.ts";
import { findById } from "../book.ts";
import { type Asked, type Planned, plannedHead, type SpeedPlan, scatter, withTest } from "./planned.ts";

/** Speeds to read, of the fastest [-]. */
export const THRUST_SPEEDS: readonly number[] = [0.5, 0.6, 0.7, 0.8, 0.9, 1, 0.55, 0.75, 0.95];

/** Up to the speed that the build runs at. */
const OWN_SPEEDS: SpeedPlan = { speeds: THRUST_SPEEDS, name: "thrust" };
/** What single readings scatter by [-]. Judgement. */
const SCATTER = 0.02;

/** @returns a thrust test of the build's propeller over its speeds unless planned otherwise, by the coefficients now held true; null for a rotor in a duct */
export function plannedThrust(
  { book, build, resolved: { propeller } }: Asked,
  { speeds, name }: SpeedPlan = OWN_SPEEDS,
): Planned | null {
  const rotor = findById(book.rotors, build.rotor)?.data;
  const point = propeller && predictPropeller(propeller, []).point;
  if (!rotor || !propeller || !point) return null;
  const air = airFrom(build.air);
  const [ofThrust, ofPower] = [scatter(speeds.length), scatter(speeds.length).reverse()];
  const rows = speeds.map((share, i) => {
    const speed = share * point.speed;
    const { thrust, power } = thrustAndPower(propeller.rotor, air, speed);
    return {
      speed: { value: speed / RPM, unit: "rpm" },
      thrust: { value: thrust * (1 + SCATTER * ofThrust[i]), unit: "N" },
      torque: { value: (power / speed) * (1 + SCATTER * ofPower[i]), unit: "N·m" },
      throttle: { value: 100, unit: "%" },
    };
  });
  const diameter = { value: build.diameter, unit: "m" };
  const head = { kind: "thrust", ...plannedHead, rotor: build.rotor, diameter } as const;
  const test: ThrustTest = { ...head, motor: build.motor, instruments: {}, rows };
  return {
    key: "thrust",
    kind: "thrust",
    title: `Thrust test of ${rotor.name}, nine speeds`,
    takes: "a scale under the propeller, tachometer, the motor's current; 15 minutes, behind a guard",
    book: withTest(book, name, test),
    build,
  };
}
