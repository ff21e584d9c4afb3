import type { CurveTest } from "../../model/tests/curve.ts";
import { evaluatePolynomial } from "../../numeric/polynomial.ts";
import { findRoot } from "../../numeric/root.ts";
import { airFrom } from "../../physics/air.ts";
import { assemble } from "../../physics/assembly.ts";
import { readingOf } from "../../physics/fanlaws/coefficients.ts";
import { type MotorConstants, RPM, torqueConstant } from "../../physics/motor.ts";
import { type PredictInput, predict } from "../../physics/predict.ts";
import { findById } from "../book.ts";
import { curveTitle } from "./curveTitle.ts";
import { type Asked, type Planned, plannedHead, type SpeedPlan, scatter, withTest } from "./planned.ts";
import { flowThrough, openStates, plateOf } from "./plate.ts";

const READINGS = 9;
/** What single readings of pressure, and of current, scatter by [-]. Judgement. */
const [PRESSURE_SCATTER, CURRENT_SCATTER] = [0.01, 0.015];
const TINY = 1e-9;
/** How far a curve without a zero is followed, of its tested range [-]. Judgement. */
const BEYOND = 2;

/** Where rotor and plate meet: φ at which the plate passes what the rotor moves; null where the plate passes more. */
function meeting(
  input: PredictInput,
  speed: number,
  end: number,
  passes: (pressure: number) => number,
): number | null {
  const { diameter, psi } = input.rotor;
  const state = { diameter, speed, density: airFrom(input.air).density };
  const excess = (phi: number) => {
    const { flow, pressure } = readingOf({ phi, psi: evaluatePolynomial(psi, phi), lambda: null }, state);
    return passes(Math.max(0, pressure)) - flow;
  };
  if (passes(Number.MIN_VALUE) === 0 && passes(1) === 0) return 0;
  return excess(TINY) > 0 && excess(end) < 0 ? findRoot(excess, TINY, end).root : null;
}

/** Current that a motor draws for a shaft power [A]. */
function currentFor(motor: MotorConstants, power: number, speed: number): number {
  return (power / speed + motor.frictionTorque + motor.viscousTorque * speed) / torqueConstant(motor.kv);
}

function rowsOf(asked: Asked, input: PredictInput, speed: number): CurveTest["rows"] {
  const air = airFrom(asked.build.air);
  const plate = plateOf(asked.book);
  const { phiEnd } = assemble(input).machine;
  const end = Number.isFinite(phiEnd) ? phiEnd : BEYOND * input.rotor.phiMax;
  const state = { diameter: input.rotor.diameter, speed, density: air.density };
  const [ofPressure, ofCurrent] = [scatter(READINGS), scatter(READINGS).reverse()];
  return openStates(plate, READINGS).flatMap((open, i) => {
    const phi = meeting(input, speed, end, (pressure) => flowThrough(plate, open, air, pressure));
    if (phi === null) return [];
    const [psi, lambda] = [input.rotor.psi, input.rotor.lambda].map((curve) =>
      evaluatePolynomial(curve, phi),
    );
    const { pressure, shaftPower } = readingOf({ phi, psi, lambda }, state);
    const current = currentFor(input.motor, Math.max(0, shaftPower ?? 0), speed);
    return [
      {
        speed: { value: speed / RPM, unit: "rpm" },
        pressure: { value: pressure * (1 + PRESSURE_SCATTER * ofPressure[i]), unit: "Pa" },
        open,
        current: { value: current * (1 + CURRENT_SCATTER * ofCurrent[i]), unit: "A" },
      },
    ];
  });
}

const OWN_SPEED: SpeedPlan = { speeds: [1], name: "curve" };

/** @returns a curve test at the build's own size, at its own speed unless planned otherwise, where its curve is now thought to lie; null without a curve to read */
export function plannedCurve(asked: Asked, { speeds, name }: SpeedPlan = OWN_SPEED): Planned | null {
  const { book, build, resolved } = asked;
  const rotor = findById(book.rotors, build.rotor)?.data;
  const { input } = resolved;
  const point = input && predict(input, []).point;
  if (!rotor || !input || !point) return null;
  const rows = speeds.flatMap((share) => rowsOf(asked, input, share * point.speed));
  if (rows.length < (speeds.length * READINGS) / 2) return null;
  const test: CurveTest = {
    kind: "curve",
    ...plannedHead,
    rotor: build.rotor,
    diameter: { value: build.diameter, unit: "m" },
    motor: build.motor,
    flowFrom: "bleed-plate",
    plate: plateOf(book),
    instruments: { pressure: { percent: 1 }, speed: { percent: 0.3 }, current: { percent: 1 } },
    rows,
  };
  return {
    key: "curve",
    kind: "curve",
    title: curveTitle(rotor.name, build.diameter),
    takes: "the bleed plate over the cavity, pressure sensor, tachometer, the motor's current; 15 minutes",
    book: withTest(book, name, test),
    build,
  };
}
