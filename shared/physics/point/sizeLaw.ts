import { evaluatePolynomial } from "../../numeric/polynomial.ts";
import type { Fluid } from "../air.ts";
import { rotorReynolds, sizeCorrectionFactor } from "../fanlaws/size.ts";
import type { Note } from "../note.ts";

/** Where the curve was measured, for the Reynolds-number correction. */
export interface TestedAt {
  /** [m] */
  readonly testedDiameter: number;
  /** [m/s] */
  readonly testedTipSpeed: number;
  /** [kg/m³]; the air of the prediction unless given */
  readonly testedDensity?: number;
  /** [Pa·s] */
  readonly testedViscosity?: number;
  /** how much of the correction is applied; 1 unless given [-] */
  readonly applied?: number;
}

export interface SizeLaw {
  /** η₂/η₁ by which the whole ψ curve is multiplied at a tip speed [m/s → -] */
  readonly factor: (tipSpeed: number) => number;
  readonly notes: readonly Note[];
}

interface Curve {
  readonly diameter: number;
  readonly psi: readonly number[];
  readonly lambda: readonly number[];
  readonly phiMax: number;
  readonly sizeCorrection: TestedAt | null;
}

type Shape = Pick<Curve, "psi" | "lambda" | "phiMax">;

const UNCORRECTED = { factor: () => 1, notes: [] } as const;
/** Points on which the peak of η is looked for before it is refined. */
const PEAK_POINTS = 400;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

function efficiency(curve: Shape, phi: number): number {
  const lambda = evaluatePolynomial(curve.lambda, phi);
  return lambda > 0 ? (phi * evaluatePolynomial(curve.psi, phi)) / lambda : 0;
}

/** Where a rotor works best. */
export interface BestPoint {
  readonly phi: number;
  /** η [-] */
  readonly efficiency: number;
}

/**
 * Place of greatest efficiency on a rotor's curve.
 *
 *     η = φψ/λ, its maximum on [0, φ_end]
 *
 * @param curve - ψ and λ by rising powers of φ [-]
 * @param phiEnd - end of the curve [-]
 * @returns φ and η there [-]
 *
 * Valid where λ > 0. Source: definition of η
 */
export function bestPoint(curve: Shape, phiEnd: number): BestPoint {
  const end = Number.isFinite(phiEnd) ? phiEnd : curve.phiMax;
  if (last.end !== end || !isSame(last.psi, curve.psi) || !isSame(last.lambda, curve.lambda))
    last = { end, psi: [...curve.psi], lambda: [...curve.lambda], best: soughtBest(curve, end) };
  return last.best;
}

/** The curve asked last: sizes of one family ask for the same again and again. */
let last: { readonly end: number; readonly best: BestPoint } & Pick<Shape, "psi" | "lambda"> = {
  end: Number.NaN,
  psi: [],
  lambda: [],
  best: { phi: Number.NaN, efficiency: Number.NaN },
};

const isSame = (a: readonly number[], b: readonly number[]): boolean =>
  a.length === b.length && a.every((value, i) => value === b[i]);

function soughtBest(curve: Shape, end: number): BestPoint {
  let best = 0;
  let most = 0;
  for (let i = 1; i < PEAK_POINTS; i++) {
    const here = efficiency(curve, (end * i) / PEAK_POINTS);
    if (!(here > most)) continue;
    best = i;
    most = here;
  }
  let [lo, hi] = [(end * Math.max(0, best - 1)) / PEAK_POINTS, (end * (best + 1)) / PEAK_POINTS];
  while (hi - lo > 1e-10 * end) {
    const [a, b] = [hi - GOLDEN * (hi - lo), lo + GOLDEN * (hi - lo)];
    if (efficiency(curve, a) > efficiency(curve, b)) hi = b;
    else lo = a;
  }
  const phi = (lo + hi) / 2;
  return { phi, efficiency: efficiency(curve, phi) };
}

/** @returns η of {@link bestPoint} [-] */
export function peakEfficiency(curve: Shape, phiEnd: number): number {
  return bestPoint(curve, phiEnd).efficiency;
}

/**
 * How the curve of a tested rotor changes with Reynolds number at another size, speed or air.
 *
 *     (1−η₂)/(1−η₁) = ½[1 + (Re₁/Re₂)^0.2],  Re = u·D·ρ/μ,  ψ₂ = ψ₁·[1 + a(η₂/η₁ − 1)], a = 1 unless given, λ kept
 *
 * @param curve - ψ, λ, diameter [m] and where it was tested [m, m/s, kg/m³, Pa·s]
 * @param phiEnd - end of the curve [-]
 * @param air - density [kg/m³], viscosity [Pa·s] of the prediction
 * @returns factor on ψ by tip speed, and notes [-]
 *
 * Valid near best efficiency, taken once there; switched off, with a note, where η is not between 0 and 1. Source: Ackeret, in Mühlemann, Schweizerische Bauzeitung 66 (1948); ISO 13348 names it
 */
export function sizeLaw(curve: Curve, phiEnd: number, air: Fluid): SizeLaw {
  const tested = curve.sizeCorrection;
  if (!tested) return UNCORRECTED;
  const peak = peakEfficiency(curve, phiEnd);
  if (!(peak > 0 && peak < 1)) {
    const message = `The size correction is left out: the curve's best efficiency would be ${(100 * peak).toFixed(0)} %, so its pressure and power do not belong together.`;
    return { factor: () => 1, notes: [{ code: "size-correction-left-out", message }] };
  }
  const testedReynolds = rotorReynolds(
    tested.testedTipSpeed,
    tested.testedDiameter,
    tested.testedDensity ?? air.density,
    tested.testedViscosity ?? air.viscosity,
  );
  const applied = tested.applied ?? 1;
  const factor = (tipSpeed: number) => {
    const reynolds = rotorReynolds(tipSpeed, curve.diameter, air.density, air.viscosity);
    return 1 + applied * (sizeCorrectionFactor(peak, testedReynolds, reynolds) - 1);
  };
  return { factor, notes: [] };
}

/** Tip speeds at which the correction is asked for its two constants, far above any rotor's, where it always has a value [m/s]. */
const [SLOW, FAST] = [1e6, 1e10];
const ACKERET_POWER = -0.2;

/**
 * The two constants of a size correction.
 *
 *     F = a − b·u^−0.2
 *
 * @param law - from {@link sizeLaw}
 * @returns a [-] and b [(m/s)^0.2]; 1 and 0 where nothing is corrected
 *
 * Valid and source: as {@link sizeLaw}
 */
export function sizeConstants({ factor }: SizeLaw): [most: number, fall: number] {
  const [slow, fast] = [factor(SLOW), factor(FAST)];
  if (slow === fast) return [fast, 0];
  const fall = (fast - slow) / (SLOW ** ACKERET_POWER - FAST ** ACKERET_POWER);
  return [fast + fall * FAST ** ACKERET_POWER, fall];
}
