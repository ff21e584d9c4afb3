import { NotEnoughDataError, OutOfRangeError } from "../numeric/errors.ts";
import { fitLinear } from "../numeric/leastSquares.ts";
import type { Note } from "../physics/note.ts";
import { formatFixed } from "../units/format.ts";
import { fallingRoot } from "./fallingRoot.ts";

export interface LeakFitPoint {
  /** [Pa] */
  readonly pressure: number;
  /** [m³/s] */
  readonly flow: number;
}

export interface LeakFit {
  /** C_L at the air of the test [m³/(s·Pa^x)] */
  readonly coefficient: number;
  /** x [-] */
  readonly exponent: number;
  /** as their values; null where no residual is left over, or x was held at a bound */
  readonly standardErrors: { readonly coefficient: number | null; readonly exponent: number | null };
  /** of (ln C_L, x), what the bands are made from; null where no residual is left over, 0 along an x held at a bound [-] */
  readonly covariance: readonly (readonly number[])[] | null;
  /** points less constants fitted [-] */
  readonly dof: number;
  /** of the flow, every point counting alike [m³/s] */
  readonly residualSd: number;
  /** smallest and largest pressure used [Pa] */
  readonly pressureRange: readonly [number, number];
  readonly warnings: readonly Note[];
}

/** Bounds of x: a sharp hole and a laminar slot [-]. ISO 9972, ASTM E779. */
const LEAST = 0.5;
const MOST = 1;
/** Pressures closer than this ratio can't show an exponent [-]. Judgement. */
const LEAST_RATIO = 1.05;
/** An exponent less certain than this says little [-]. Judgement. */
const DOUBTFUL = 0.1;
/** How far from 0 the free exponent is looked for [-]. */
const FARTHEST = 10;

/**
 * Power law of a leak from pressures and flows.
 *
 *     Q = C_L·Δp^x, 0.5 ≤ x ≤ 1:  ln Q = ln C_L + x·ln Δp first, then min Σ(Q − C_L·Δp^x)²
 *
 * @param request - points: pressure [Pa], flow [m³/s]; those with either not above 0 are left out and counted
 * @returns C_L [m³/(s·Pa^x)], x [-], their standard errors, residual sd [m³/s], range used [Pa], notes
 * @throws {OutOfRangeError} on a reading that is not finite, by its path
 * @throws {NotEnoughDataError} on no usable point, one, or all at one pressure
 *
 * Valid between the smallest and the largest pressure, at the air of the test; other air by {@link leakCoefficientAt}. The errors take the flow's scatter as even over the range.
 * Source: form of ISO 9972 and ASTM E779; docs/method/fits/leak.md
 */
export function fitLeak(request: { readonly points: readonly LeakFitPoint[] }): LeakFit {
  const points = usable(request.points);
  const pressures = points.map((point) => point.pressure);
  const range = [Math.min(...pressures), Math.max(...pressures)] as const;
  if (!(range[1] > LEAST_RATIO * range[0]))
    throw new NotEnoughDataError(
      "All usable points lie at one pressure.",
      "Measure the flow at pressures at least a factor of two apart.",
      "points",
    );
  const law = new PowerLaw(points, Math.sqrt(range[0] * range[1]));
  const free = law.bestExponent();
  const bound = free < LEAST ? LEAST : free > MOST ? MOST : null;
  const skipped = skippedNote(request.points.length - points.length);
  if (bound !== null) {
    const fit = law.atBound(bound);
    return { ...fit, pressureRange: range, warnings: [...skipped, boundNote(free, bound)] };
  }
  const fit = law.at(free);
  return { ...fit, pressureRange: range, warnings: [...skipped, ...errorNotes(fit)] };
}

function usable(points: readonly LeakFitPoint[]): LeakFitPoint[] {
  points.forEach(({ pressure, flow }, i) => {
    if (!Number.isFinite(pressure))
      throw new OutOfRangeError(`points.${i}.pressure`, pressure, "a finite number");
    if (!Number.isFinite(flow)) throw new OutOfRangeError(`points.${i}.flow`, flow, "a finite number");
  });
  const kept = points.filter(({ pressure, flow }) => pressure > 0 && flow > 0);
  if (kept.length < 2)
    throw new NotEnoughDataError(
      `A leak needs two points with pressure and flow above 0, there ${kept.length === 1 ? "is" : "are"} ${kept.length}.`,
      "Measure the flow at two or more suctions; where flows or pressures read below 0, swap the sensor's ports.",
      "points",
    );
  return kept;
}

type LawFit = Omit<LeakFit, "pressureRange" | "warnings">;

/** Q = A·(Δp/p₀)^x with p₀ amid the pressures, where A and x hardly depend on each other. */
class PowerLaw {
  private readonly logs: readonly number[];
  private readonly flows: readonly number[];

  constructor(
    points: readonly LeakFitPoint[],
    private readonly middle: number,
  ) {
    this.logs = points.map((point) => Math.log(point.pressure / middle));
    this.flows = points.map((point) => point.flow);
  }

  /** Of the least squares in Q, begun at that of the logarithms: where the residuals no longer lean with ln Δp. */
  bestExponent(): number {
    const start = fitLinear({
      design: this.logs.map((log) => [1, log]),
      response: this.flows.map(Math.log),
    }).coefficients[1];
    const lean = (x: number) => {
      const shape = this.logs.map((log) => Math.exp(x * log));
      const amplitude = this.amplitude(shape);
      return this.flows.reduce(
        (sum, flow, i) => sum + (flow - amplitude * shape[i]) * shape[i] * this.logs[i],
        0,
      );
    };
    return fallingRoot(lean, start, 1 / 20, -FARTHEST, FARTHEST) ?? start;
  }

  private amplitude(shape: readonly number[]): number {
    const top = shape.reduce((sum, s, i) => sum + s * this.flows[i], 0);
    return top / shape.reduce((sum, s) => sum + s * s, 0);
  }

  /** The least squares in Q linearised at its own answer: there the steps are 0, and the errors are those of C_L and x. */
  at(exponent: number): LawFit {
    const shape = this.logs.map((log) => Math.exp(exponent * log));
    const amplitude = this.amplitude(shape);
    const fit = fitLinear({
      design: shape.map((s, i) => [s, amplitude * s * this.logs[i]]),
      response: this.flows.map((flow, i) => flow - amplitude * shape[i]),
    });
    const coefficient = amplitude * this.middle ** -exponent;
    const covariance = fit.covariance && this.ofCoefficient(fit.covariance, amplitude);
    return {
      coefficient,
      exponent,
      covariance,
      dof: fit.dof,
      standardErrors: {
        coefficient: covariance && coefficient * Math.sqrt(covariance[0][0]),
        exponent: covariance && Math.sqrt(covariance[1][1]),
      },
      residualSd: fit.residualSd,
    };
  }

  /** ln C_L = ln A − x·ln p₀: the covariance of (A, x) restated for (ln C_L, x). */
  private ofCoefficient(
    [[aa, ax], [, xx]]: readonly (readonly number[])[],
    amplitude: number,
  ): LeakFit["covariance"] {
    const log = Math.log(this.middle);
    const variance = aa / amplitude ** 2 - (2 * log * ax) / amplitude + log ** 2 * xx;
    const both = ax / amplitude - log * xx;
    return [
      [Math.max(0, variance), both],
      [both, xx],
    ];
  }

  atBound(exponent: number): LawFit {
    const fit = fitLinear({
      design: this.logs.map((log) => [Math.exp(exponent * log)]),
      response: this.flows,
    });
    const scale = this.middle ** -exponent;
    const relative = fit.standardErrors && fit.standardErrors[0] / fit.coefficients[0];
    return {
      coefficient: fit.coefficients[0] * scale,
      exponent,
      covariance:
        relative === null
          ? null
          : [
              [relative ** 2, 0],
              [0, 0],
            ],
      dof: fit.dof,
      standardErrors: {
        coefficient: fit.standardErrors && fit.standardErrors[0] * scale,
        exponent: null,
      },
      residualSd: fit.residualSd,
    };
  }
}

function skippedNote(count: number): Note[] {
  if (count === 0) return [];
  return [{ code: "skipped", message: `${count} points with a pressure or flow not above 0 were left out.` }];
}

function boundNote(free: number, bound: number): Note {
  const end = bound === LEAST ? "that of a sharp hole" : "that of a laminar slot";
  return {
    code: "exponent-at-bound",
    message: `The readings alone would give x = ${formatFixed(free, 3)}; it is held at ${bound}, ${end}. Check zero offsets of both sensors.`,
  };
}

function errorNotes(fit: LawFit): Note[] {
  const error = fit.standardErrors.exponent;
  if (error === null)
    return [
      {
        code: "no-residual",
        message: "Two points leave no residual: the uncertainty is unknown. Add readings at other suctions.",
      },
    ];
  if (!(error > DOUBTFUL)) return [];
  return [
    {
      code: "exponent-doubtful",
      message: `The exponent is known to ±${formatFixed(error, 2)} only. Add readings at pressures further apart.`,
    },
  ];
}
