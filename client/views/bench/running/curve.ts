import type { Book } from "../../../../shared/book/book.ts";
import { motorBasis } from "../../../../shared/book/motorBasis.ts";
import { curveReadings } from "../../../../shared/book/readings/curve.ts";
import { inUse } from "../../../../shared/book/readings/reading.ts";
import { fitRotor, type RotorFit } from "../../../../shared/fit/rotorFit.ts";
import { rotorPoints } from "../../../../shared/fit/rotorPoints.ts";
import type { CurveTest } from "../../../../shared/model/tests/curve.ts";
import { formatQuantity } from "../../../../shared/units/format.ts";
import { toSI } from "../../../../shared/units/parse.ts";
import { attempt, digits, type Figure, NOTHING_YET, type RowName, type Running } from "./result.ts";
import { curveSketch } from "./sketches.ts";

function rowText(reading: { flow: number }, phi: number, psi: number): string {
  return `${formatQuantity(reading.flow, "flow")} φ\u00a0${digits(phi)} ψ\u00a0${digits(psi)}`;
}

function figuresOf(fit: RotorFit, count: number): Figure[] {
  const twoPoint = fit.dof === 0 && count === 2;
  return [
    {
      label: "Blocked, ψ₀",
      text: digits(fit.psi[0]),
      mark: twoPoint ? "two-point" : undefined,
    },
    { label: "Degree", text: String(fit.degree) },
    { label: "R²", text: fit.dof > 0 ? digits(fit.rSquared, 4) : "–" },
    {
      label: "Residuals, of ψ₀",
      text: fit.dof > 0 ? `${digits((100 * fit.residualSd) / fit.psi[0], 2)} %` : "–",
    },
    { label: "φ tested", text: `${digits(fit.phiMin, 2)} to ${digits(fit.phiMax, 2)}` },
    { label: "Power curve λ", text: fit.lambda ? "known" : "not yet: needs current and motor, or torque" },
  ];
}

/** Flow by the bleed plate, φ and ψ of each row, and the fit so far. */
export function runCurve(test: CurveTest, names: readonly RowName[], book: Book): Running {
  if (test.diameter === undefined) return { ...NOTHING_YET, next: "Give the rotor's diameter." };
  if (test.rows.length === 0)
    return { ...NOTHING_YET, next: "Type a first point: plate shut, the blocked pressure." };
  const motor = test.motor ? (motorBasis(book, test.motor)?.constants ?? null) : null;
  const diameter = toSI(test.diameter, "length");
  const read = attempt(() => {
    const readings = curveReadings(test, motor);
    return { readings, points: rotorPoints(diameter, readings) };
  });
  if (!read.found) return { ...NOTHING_YET, next: read.next };
  const { readings, points } = read.found;
  const byRow = new Map(
    readings.map((reading, i) => [names[i].key, rowText(reading, points[i].phi, points[i].psi)]),
  );
  const used = inUse(readings);
  const { found: fit, next } = attempt(() => fitRotor({ diameter, points: used }));
  return {
    figures: fit ? figuresOf(fit, used.length) : [],
    byRow,
    next,
    notes: fit ? [fit.reason, ...fit.warnings.map((warning) => warning.message)].filter(Boolean) : [],
    sketch: curveSketch(readings, points, fit, names),
  };
}
