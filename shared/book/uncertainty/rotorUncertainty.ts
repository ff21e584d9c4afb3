import { testOffsets } from "../../fit/testOffsets.ts";
import type { StoredOf } from "../../model/record.ts";
import { NoConvergenceError, NotEnoughDataError } from "../../numeric/errors.ts";
import { type Book, oncePerBook, testsOf } from "../book.ts";
import type { PropellerBasis } from "../propellerBasis.ts";
import type { RotorBasis } from "../rotorBasis.ts";
import type { Collector } from "./collector.ts";

type Matrix = readonly (readonly number[])[];

/** A curve from geometry, or from two readings alone, is good to ±30 %, taken whole as a standard uncertainty [-]. METHOD 3. */
const GUESSED = 0.3;
/** Flow by a plate that was not calibrated is good to ±3 %, taken whole as a standard uncertainty [-]. METHOD 2. */
const PLATE = 0.03;

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
  try {
    const { tests } = testOffsets({ diameter: used[0].diameter ?? 0, points: used });
    const mean = tests.reduce((sum, { offset }) => sum + offset, 0) / tests.length;
    const spread = tests.reduce((sum, { offset }) => sum + (offset - mean) ** 2, 0) / (tests.length - 1);
    const own = tests.reduce((sum, { standardError }) => sum + standardError ** 2, 0) / tests.length;
    return Math.sqrt(Math.max(0, spread - own) / tests.length);
  } catch (error) {
    if (error instanceof NotEnoughDataError || error instanceof NoConvergenceError) return 0;
    throw error;
  }
}

/** Share of a family's readings whose flow came through a plate without a calibration. */
function plateShare(book: Book, { points }: RotorBasis): number {
  const bare = new Set(
    testsOf(book, "curve").flatMap(({ id, data }) => {
      const holes = data.flowFrom === "bleed-plate" ? (data.plate?.holes ?? []) : [];
      return holes.some((hole) => hole.dischargeCoefficient === undefined) ? [id] : [];
    }),
  );
  const used = points.filter((point) => point.setAside === null);
  return used.length === 0 ? 0 : used.filter((point) => bare.has(point.testId)).length / used.length;
}

/** Covariance of the coefficients of ψ, then of λ: the fit's own, and what shifts the whole curve. */
function curveCovariance(book: Book, rotor: RotorBasis): number[][] {
  const { psi, lambda, fit } = rotor;
  const power = lambda ?? [];
  const own = besides(fit?.covariance ?? [], psi.length, fit?.lambdaCovariance ?? [], power.length);
  // a speed read e too high: cⱼ(1 + e)^(2−j) of ψ, and of λ, whose power is torque times speed;  a flow f too low: cⱼ(1 + f)^(−j)
  const bySpeed = [psi, power].flatMap((curve) => curve.map((c, j) => (2 - j) * c));
  const byFlow = [psi, power].flatMap((curve) => curve.map((c, j) => -j * c));
  const speed = byFactor(speedUncertainty(rotor), bySpeed);
  return plus(own, plus(speed, byFactor(PLATE * plateShare(book, rotor), byFlow)));
}

/** A curve that is a guess: ψ by one factor; λ too where it was guessed. */
export function addRotorUncertainty(
  book: Book,
  { id, data: { name } }: StoredOf<"rotors">,
  rotor: RotorBasis,
  into: Collector,
): void {
  const { basis, psi, lambda } = rotor;
  if (basis === "measured") {
    const covariance = oncePerBook(book, `curve covariance ${id}`, () => curveCovariance(book, rotor));
    const paths = [...pathsOf("rotor.psi", psi), ...pathsOf("rotor.lambda", lambda)];
    into.addGroup(paths, covariance, { from: "fit", what: `curve tests of ${name}`, test: "curve" });
    return;
  }
  const what =
    basis === "estimated" ? `curve estimated from the geometry of ${name}` : `two readings of ${name}`;
  const source = { from: "estimate", what, test: "curve" } as const;
  into.addGroup(pathsOf("rotor.psi", psi), byFactor(GUESSED, psi), source);
  if (basis === "estimated" && lambda)
    into.addGroup(pathsOf("rotor.lambda", lambda), byFactor(GUESSED, lambda), source);
  else into.addGroup(pathsOf("rotor.lambda", lambda), rotor.fit?.lambdaCovariance ?? [], source);
}

/** Coefficients of a propeller, each with its drift. */
export function addThrustUncertainty(name: string, { fit }: PropellerBasis, into: Collector): void {
  const source = { from: "fit", what: `thrust tests of ${name}`, test: "thrust" } as const;
  for (const key of ["thrust", "power"] as const) {
    const covariance = fit.covariance[key];
    if (covariance) into.addGroup([`rotor.${key}.0`, `rotor.${key}.1`], covariance, source);
  }
}
