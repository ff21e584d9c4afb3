import { testOffsets } from "../../fit/testOffsets.ts";
import { UNSHOWN } from "../../fit/twoPointFit.ts";
import type { StoredOf } from "../../model/record.ts";
import { answerOrNull } from "../../numeric/errors.ts";
import { ESTIMATE_UNCERTAINTY } from "../../physics/fanlaws/estimate.ts";
import { type Book, oncePerBook } from "../book.ts";
import type { PropellerBasis } from "../propellerBasis.ts";
import type { RotorBasis } from "../rotorBasis.ts";
import type { Collector, UncertaintySource } from "./collector.ts";
import { widened } from "./widened.ts";

type Matrix = readonly (readonly number[])[];

const pathsOf = (name: string, coefficients: readonly number[] | null): string[] =>
  (coefficients ?? []).map((_, j) => `${name}.${j}`);

/** u²·g·gᵀ: what a common factor adds to the covariance of numbers that change by g with it. */
function byFactor(u: number, g: readonly number[]): number[][] {
  return g.map((a) => g.map((b) => u * u * a * b));
}

function plus(a: Matrix, b: Matrix): number[][] {
  return a.map((row, i) => row.map((value, j) => value + b[i][j]));
}

/** Two covariances of numbers that don't depend on each other; an unknown one counts as 0. */
function besides(a: Matrix, n: number, b: Matrix, m: number): number[][] {
  return Array.from({ length: n + m }, (_, i) =>
    Array.from({ length: n + m }, (_, j) => {
      if (i < n && j < n) return a[i]?.[j] ?? 0;
      return i >= n && j >= n ? (b[i - n]?.[j - n] ?? 0) : 0;
    }),
  );
}

/**
 * What the tests of a family differ by beyond their readings' scatter, as if each had its own tachometer.
 *
 *     τ² = s²(e) − mean u²(e), of the mean curve τ²/K
 *
 * @returns relative standard uncertainty of the speed behind the mean curve [-]; 0 where the tests agree, or there is one
 */
function speedUncertainty({ points, fit }: RotorBasis): number {
  const used = points.filter((point) => point.setAside === null);
  if (!fit || used.length === 0) return 0;
  const offsets = answerOrNull(() => testOffsets({ diameter: used[0].diameter ?? 0, points: used }));
  if (!offsets) return 0;
  const { tests } = offsets;
  const mean = tests.reduce((sum, { offset }) => sum + offset, 0) / tests.length;
  const spread = tests.reduce((sum, { offset }) => sum + (offset - mean) ** 2, 0) / (tests.length - 1);
  const own = tests.reduce((sum, { standardError }) => sum + standardError ** 2, 0) / tests.length;
  return Math.sqrt(Math.max(0, spread - own) / tests.length);
}

/** Covariance of the coefficients of ψ, then of λ: the fit's own, and what shifts the whole curve. */
function curveCovariance(rotor: RotorBasis): number[][] {
  const { psi, lambda, fit } = rotor;
  const power = lambda ?? [];
  const own = widened(
    besides(fit?.covariance ?? [], psi.length, fit?.lambdaCovariance ?? [], power.length),
    fit?.dof ?? 0,
  );
  // a speed read e too high: cⱼ(1 + e)^(j−2) of ψ, and of λ, whose power is torque times speed
  const bySpeed = [psi, power].flatMap((curve) => curve.map((c, j) => (2 - j) * c));
  return plus(own, byFactor(speedUncertainty(rotor), bySpeed));
}

/** Who says what a curve that its readings can't show is uncertain by. */
function guessOf(name: string, basis: RotorBasis["basis"]): UncertaintySource {
  const whats = {
    estimated: `curve estimated from the geometry of ${name}`,
    "two-point": `two readings of ${name}`,
    measured: `few readings of ${name}`,
  };
  return { from: "estimate", what: whats[basis], test: "curve" };
}

/** ψ and λ from their fits; by one factor each where the readings leave no residual, or there are none. */
export function addRotorUncertainty(
  book: Book,
  { id, data: { name } }: StoredOf<"rotors">,
  rotor: RotorBasis,
  into: Collector,
): void {
  const { basis, psi, lambda, fit } = rotor;
  const [psiPaths, lambdaPaths] = [pathsOf("rotor.psi", psi), pathsOf("rotor.lambda", lambda)];
  const guess = guessOf(name, basis);
  const guessed = basis === "estimated" ? ESTIMATE_UNCERTAINTY : UNSHOWN;
  const powerCovariance = fit?.lambdaCovariance ?? [];
  const powerShown = powerCovariance.length > 0;
  if (basis === "measured" && fit && fit.covariance.length > 0) {
    const covariance = oncePerBook(book, `curve covariance ${id}`, () => curveCovariance(rotor));
    const source = { from: "fit", what: `curve tests of ${name}`, test: "curve" } as const;
    into.addGroup(powerShown ? [...psiPaths, ...lambdaPaths] : psiPaths, covariance, source);
  } else {
    into.addGroup(psiPaths, byFactor(guessed, psi), guess);
    into.addGroup(lambdaPaths, powerCovariance, guess);
  }
  if (!powerShown) into.addGroup(lambdaPaths, byFactor(guessed, lambda ?? []), guess);
}

/** Of the size correction, how much of it may be wrong [-]. Common practice, no source: docs/method/uncertainty.md, What was never measured here. */
const SIZE_LAW = 0.5;

/** A rotor printed at a size that was never tested: the law that carries its curve there. */
export function addSizeLaw(name: string, into: Collector): void {
  const what = `size correction of ${name}, half of it`;
  into.add("rotor.sizeCorrection.applied", SIZE_LAW, { from: "default", what, test: "curve" });
}

/** Coefficients of a propeller, each with its drift. */
export function addThrustUncertainty(name: string, { fit }: PropellerBasis, into: Collector): void {
  const source = { from: "fit", what: `thrust tests of ${name}`, test: "thrust" } as const;
  for (const key of ["thrust", "power"] as const) {
    const covariance = fit.covariance[key];
    if (covariance) into.addGroup([`rotor.${key}.0`, `rotor.${key}.1`], covariance, source);
  }
}
