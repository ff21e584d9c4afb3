import type { ThrustTest } from "../../model/tests/thrust.ts";
import { STANDARD_AIR_DENSITY } from "../../physics/constants.ts";
import { toSI } from "../../units/quantity.ts";
import { type Book, findById } from "../book.ts";
import { propellerBasis } from "../propellerBasis.ts";
import { inUse } from "../readings/reading.ts";
import { thrustReadings } from "../readings/thrust.ts";
import { slipOfSpeed, testedSpeeds } from "./curve.ts";
import { stallCurrent } from "./motor.ts";
import { slipOfDiameter } from "./ofPart.ts";
import { beside, OFF, type Slip, slipOf, UNIT } from "./slip.ts";

/** C_T of small propellers at rest [-]. Common practice, no source. */
const ANY_COEFFICIENT = { low: 0.03, high: 0.25 } as const;

/** @returns readings of a thrust test that may be slips, beside the propeller's coefficient: T = C_T·ρ·n²·D⁴ */
export function slipsOfThrust(book: Book, test: ThrustTest): Slip[] {
  const basis = propellerBasis(book, test.rotor);
  const known =
    basis.basis === "measured" ? { low: basis.fit.thrust[0], high: basis.fit.thrust[0] } : ANY_COEFFICIENT;
  const whose = basis.basis === "measured" ? "by the propeller's other tests" : "for any propeller";
  const tested = testedSpeeds(book, "thrust", test.rotor);
  const motor = findById(book.motors, test.motor)?.data ?? null;
  const rows = inUse(thrustReadings(test, null)).flatMap((reading): Slip[] => {
    const row = test.rows[reading.row];
    const at = (key: string) => `rows.${reading.row}.${key}`;
    const { diameter, rpm, density = STANDARD_AIR_DENSITY } = reading;
    const unit = density * (rpm / 60) ** 2 * diameter ** 4;
    const [low, high] = [known.low * unit, known.high * unit];
    return [
      ...slipOfSpeed(at("speed"), toSI(row.speed, "speed"), tested),
      ...slipOf({
        path: at("thrust"),
        value: reading.thrust,
        low,
        high,
        slack: OFF,
        said: `about ${beside(Math.sqrt(low * high), "load", row.thrust)} at this speed ${whose}. ${UNIT}`,
      }),
      ...(row.current ? stallCurrent(at("current"), row.current, row.voltage, motor) : []),
    ];
  });
  return [...slipOfDiameter(book, test.rotor, toSI(test.diameter, "length")), ...rows];
}
