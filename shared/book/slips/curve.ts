import type { CurveTest } from "../../model/tests/curve.ts";
import { STANDARD_AIR_DENSITY } from "../../physics/constants.ts";
import { readingOf } from "../../physics/fanlaws/coefficients.ts";
import { toSI } from "../../units/quantity.ts";
import { type Book, findById, testsOf } from "../book.ts";
import { curveReadings } from "../readings/curve.ts";
import { inUse } from "../readings/reading.ts";
import { rotorBasis } from "../rotorBasis.ts";
import { stallCurrent } from "./motor.ts";
import { slipOfDiameter } from "./ofPart.ts";
import { beside, between, OFF, type Slip, slipOf, UNIT } from "./slip.ts";
import { unusual } from "./usual.ts";

/** Of rotors without a curve yet: ψ blocked and φ at most [-]. Common practice, no source. */
const ANY_CURVE = { psiLow: 0.2, psiHigh: 1.6, phiHigh: 0.6 } as const;
/** [rad/s] */
const ANY_SPEED = { name: "speed", low: 50, high: 25_000 } as const;
const AIR = { name: "density", low: 0.6, high: 1.5 } as const;

/** The curve that the book knows of the rotor, the test itself not among its tests; else what any rotor's may be. */
function knownCurve(book: Book, rotorId: string) {
  const basis = rotorBasis(book, rotorId);
  if (basis.basis !== "measured") return { ...ANY_CURVE, tested: false };
  const [blocked] = basis.psi;
  return { psiLow: blocked, psiHigh: blocked, phiHigh: basis.phiMax, tested: true };
}

/** Slowest and fastest [rad/s]. */
interface Speeds {
  readonly low: number;
  readonly high: number;
}

/** @returns the speeds of the rotor's other tests; null where none is logged */
export function testedSpeeds(book: Book, kind: "curve" | "thrust", rotorId: string): Speeds | null {
  return testsOf(book, kind)
    .filter(({ data }) => data.rotor === rotorId)
    .flatMap(({ data }) => data.rows.map((row) => toSI(row.speed, "speed")))
    .reduce<Speeds | null>(
      (all, speed) => ({
        low: Math.min(all?.low ?? speed, speed),
        high: Math.max(all?.high ?? speed, speed),
      }),
      null,
    );
}

/** @returns a speed as a slip beside the rotor's other tests, or beside what is usual */
export function slipOfSpeed(path: string, speed: number, tested: Speeds | null): Slip[] {
  if (!tested) return unusual(path, speed, ANY_SPEED);
  const said = `the rotor was tested at ${between(tested.low, tested.high, "speed")}. ${UNIT}`;
  return slipOf({ path, value: speed, ...tested, slack: OFF, said });
}

/** @returns readings of a curve test that may be slips, beside the curve that the book knows */
export function slipsOfCurve(book: Book, test: CurveTest): Slip[] {
  const curve = knownCurve(book, test.rotor);
  const tested = testedSpeeds(book, "curve", test.rotor);
  const motor = findById(book.motors, test.motor)?.data ?? null;
  const whose = curve.tested ? "by the rotor's curve" : "for any rotor";
  const rows = inUse(curveReadings(test, null)).flatMap((reading): Slip[] => {
    const row = test.rows[reading.row];
    const at = (key: string) => `rows.${reading.row}.${key}`;
    const { density = STANDARD_AIR_DENSITY, diameter = toSI(test.diameter, "length") } = reading;
    const speed = toSI(row.speed, "speed");
    const limit = (psi: number) =>
      readingOf({ psi, phi: curve.phiHigh, lambda: null }, { diameter, speed, density });
    const [low, high] = [limit(curve.psiLow), limit(curve.psiHigh)];
    const blocked = reading.flow === 0;
    return [
      ...slipOfSpeed(at("speed"), speed, tested),
      ...slipOf({
        path: at("pressure"),
        value: reading.pressure,
        low: blocked ? low.pressure : null,
        high: high.pressure,
        slack: OFF,
        said: `up to ${beside(high.pressure, "pressure", row.pressure)} at this speed ${whose}. ${UNIT}`,
      }),
      ...(row.flow
        ? slipOf({
            path: at("flow"),
            value: reading.flow,
            low: null,
            high: high.flow,
            slack: OFF,
            said: `up to ${beside(high.flow, "flow", row.flow)} at this speed ${whose}. ${UNIT}`,
          })
        : []),
      ...(row.density ? unusual(at("density"), toSI(row.density, "density"), AIR) : []),
      ...(row.current ? stallCurrent(at("current"), row.current, row.voltage, motor) : []),
    ];
  });
  return [...slipOfDiameter(book, test.rotor, toSI(test.diameter, "length")), ...rows];
}
