import { UNSHOWN } from "../../../../shared/fit/twoPointFit.ts";
import { evaluatePolynomial } from "../../../../shared/numeric/polynomial.ts";
import { ESTIMATE_UNCERTAINTY } from "../../../../shared/physics/fanlaws/estimate.ts";
import { axisOver } from "../../../charts/model/axis.ts";
import type { Band, Line, Mark, Plot, ShapeLabel } from "../../../charts/model/plot.ts";
import { testName } from "../typed.ts";
import type { FamilyReading, RotorFamily } from "./family.ts";
import { type Shown, unitsOf } from "./shown.ts";

/** Half-widths at one φ of the mean's and the next reading's 95 % band, in ψ; null where nothing judges them. */
export type BandAt = (phi: number) => { readonly mean: number; readonly prediction: number } | null;

const STEPS = 120;
/** How far past the last reading a curve is drawn that never comes down to zero. */
const BEYOND = 1.1;

/** End of the axis where no reading has a flow [φ]. */
const ANY_FLOW = 0.2;

/** @returns where the drawn curve ends [φ]: open, or a little past the last reading */
export function endOf(family: RotorFamily): number {
  const farthest = Math.max(0, ...family.readings.map((reading) => reading.phi));
  return Math.max(family.phiFree ?? farthest * BEYOND, farthest) || ANY_FLOW;
}

function span(from: number, to: number, steps = STEPS): number[] {
  return Array.from({ length: steps + 1 }, (_, i) => from + ((to - from) * i) / steps);
}

/** ψ, λ or η of the fitted curve. */
function curveOf(family: RotorFamily, as: Shown["as"]): ((phi: number) => number) | null {
  const { answer } = family;
  if (answer.basis === "missing") return null;
  const psi = (phi: number) => evaluatePolynomial(answer.psi, phi);
  if (as === "psi" || as === "pressure") return psi;
  const { lambda } = answer;
  if (!lambda) return null;
  const power = (phi: number) => evaluatePolynomial(lambda, phi);
  return as === "lambda" ? power : (phi) => Math.max(0, (phi * psi(phi)) / power(phi));
}

function shownValue(reading: FamilyReading, as: Shown["as"]): number | null {
  if (as === "psi" || as === "pressure") return reading.psi;
  if (reading.lambda === null) return null;
  if (as === "lambda") return reading.lambda;
  return reading.lambda > 0 ? (reading.phi * reading.psi) / reading.lambda : null;
}

function linesOf(family: RotorFamily, shown: Shown): Line[] {
  const curve = curveOf(family, shown.as);
  const { answer } = family;
  if (!curve || answer.basis === "missing") return [];
  const units = unitsOf(family, shown);
  const at = (phi: number) => ({ x: units.x(phi), y: units.y(curve(phi)) });
  const draw = (key: string, style: Line["style"], from: number, to: number): Line[] =>
    to - from > 1e-9 ? [{ key, tone: "rotor", style, points: span(from, to).map(at) }] : [];
  const end = family.phiFree ?? endOf(family);
  if (answer.basis === "estimated") return draw("beyond", "dashed", 0, end);
  return [
    ...draw("below", "dashed", 0, answer.phiMin),
    ...draw("tested", "solid", answer.phiMin, answer.phiMax),
    ...draw("beyond", "dashed", answer.phiMax, end),
  ];
}

/** @returns share of ψ that the curve counts as uncertain by where its readings can't show it [-]; null where they do */
function assumedUncertainty({ answer, fit }: RotorFamily): number | null {
  if (answer.basis === "estimated") return ESTIMATE_UNCERTAINTY;
  return answer.basis === "two-point" || fit?.dof === 0 ? UNSHOWN : null;
}

function bandsOf(family: RotorFamily, shown: Shown, bandAt: BandAt): Band[] {
  const { answer } = family;
  if (answer.basis === "missing" || (shown.as !== "psi" && shown.as !== "pressure")) return [];
  const units = unitsOf(family, shown);
  const assumed = assumedUncertainty(family);
  const make = (strength: Band["strength"]): Band => ({
    key: strength,
    tone: "rotor",
    strength,
    points: span(0, endOf(family)).map((phi) => {
      const psi = evaluatePolynomial(answer.psi, phi);
      const half = assumed === null ? (bandAt(phi)?.[strength] ?? Number.NaN) : assumed * psi;
      return { x: units.x(phi), lo: units.y(psi - half), hi: units.y(psi + half) };
    }),
  });
  return assumed === null ? [make("prediction"), make("mean")] : [make("prediction")];
}

/** @returns which shape stands for which test */
export function shapesOf(family: Pick<RotorFamily, "tests">): ShapeLabel[] {
  return family.tests.map((test, shape) => ({ key: test.id, shape, text: testName(test) }));
}

function mark(reading: FamilyReading, x: number, y: number): Mark {
  const { key, test, aside, outlier } = reading;
  return { key, x, y, shape: test, tone: "rotor", aside: aside !== null, outlier };
}

/** @returns the family's chart: readings, fitted curve, bands, in what is to be shown */
export function curvePlot(family: RotorFamily, shown: Shown, bandAt: BandAt): Plot {
  const units = unitsOf(family, shown);
  const marks = family.readings.flatMap((reading) => {
    const value = shownValue(reading, shown.as);
    return value === null ? [] : [mark(reading, units.x(reading.phi), units.y(value))];
  });
  const lines = linesOf(family, shown);
  const bands = bandsOf(family, shown, bandAt);
  const ys = [...marks, ...lines.flatMap((line) => line.points)].map((point) => point.y);
  const tested = bands
    .flatMap((band) => band.points)
    .filter((point) => point.x <= units.x(family.fit?.phiMax ?? Number.POSITIVE_INFINITY));
  return {
    x: axisOver(units.xLabel, [units.x(endOf(family))], [0]),
    y: axisOver(units.yLabel, [...ys, ...tested.flatMap((point) => [point.hi])], [0]),
    bands,
    lines,
    marks,
    shapes: shapesOf(family),
  };
}

const PERCENT = 100;

/** @returns the residuals on the same x as the curve, in percent of blocked pressure */
export function residualPlot(family: RotorFamily, shown: Shown, bandAt: BandAt): Plot {
  const units = unitsOf(family, shown);
  const psi0 = family.fit?.psi[0] ?? 1;
  const seen = family.readings.flatMap((reading) =>
    reading.residual === null ? [] : [mark(reading, units.x(reading.phi), reading.residual * PERCENT)],
  );
  const bands = (["prediction", "mean"] as const).map((strength): Band => {
    const points = span(0, endOf(family)).map((phi) => {
      const half = ((bandAt(phi)?.[strength] ?? Number.NaN) / psi0) * PERCENT;
      return { x: units.x(phi), lo: -half, hi: half };
    });
    return { key: strength, tone: "rotor", strength, points };
  });
  const values = seen.filter((each) => !each.aside).map((each) => each.y);
  const most = Math.max(0.5, ...values.map(Math.abs));
  return {
    x: axisOver(units.xLabel, [units.x(endOf(family))], [0]),
    y: axisOver("residual, % of blocked pressure", [-most, most]),
    bands,
    levels: [{ key: "zero", along: "x", at: 0, tone: "quiet" }],
    marks: seen,
    shapes: shapesOf(family),
    namedAbove: true,
  };
}
