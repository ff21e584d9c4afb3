import { type Book, findById } from "../../../../shared/book/book.ts";
import { type EstimateOff, estimateOff } from "../../../../shared/book/estimateOff.ts";
import {
  type FamilyPoint,
  familyPoints,
  type RotorAnswer,
  rotorBasis,
} from "../../../../shared/book/rotorBasis.ts";
import type { RotorFit } from "../../../../shared/fit/rotorFit.ts";
import { rotorPoints } from "../../../../shared/fit/rotorPoints.ts";
import type { StoredOf } from "../../../../shared/model/record.ts";
import { evaluatePolynomial, firstPositiveZero } from "../../../../shared/numeric/polynomial.ts";
import type { Source } from "../chosen.ts";

/** One reading of a family as the fan laws see it, with its place in the book. */
export interface FamilyReading extends Source {
  readonly key: string;
  /** index of its test among the family's tests */
  readonly test: number;
  /** why it is left out of the fit, null where it takes part */
  readonly aside: string | null;
  readonly outlier: boolean;
  readonly phi: number;
  readonly psi: number;
  readonly lambda: number | null;
  readonly rpm: number;
  readonly diameter: number;
  readonly density: number;
  readonly flow: number;
  readonly pressure: number;
  /** of the reading in the fit, relative to the others [-] */
  readonly weight: number;
  /** ψ read less ψ fitted, over ψ with no flow; null without a fit, or where the fit leaves no residual [-] */
  readonly residual: number | null;
}

export interface RotorFamily {
  readonly rotor: StoredOf<"rotors">;
  readonly answer: RotorAnswer;
  readonly fit: RotorFit | null;
  /** in the order of the book; a reading's `test` points here */
  readonly tests: readonly StoredOf<"tests">[];
  readonly readings: readonly FamilyReading[];
  /** φ at which ψ comes down to zero, where it does */
  readonly phiFree: number | null;
  /** how far the estimate from its geometry was off; null where there is none, or nothing was tested */
  readonly estimateOff: EstimateOff | null;
}

/** Standard air of ISO 5801, for a reading without a density [kg/m³]; the fit uses the same. */
const STANDARD_DENSITY = 1.2;

/** @returns the family's curve, its tests and every reading; null where the book has no such rotor */
export function rotorFamily(book: Book, rotorId: string): RotorFamily | null {
  const rotor = findById(book.rotors, rotorId);
  if (!rotor) return null;
  const answer = rotorBasis(book, rotorId);
  const fit = answer.basis === "missing" ? null : answer.fit;
  const tests = book.tests.filter((test) => test.data.kind === "curve" && test.data.rotor === rotorId);
  const psi = answer.basis === "missing" ? null : answer.psi;
  return {
    rotor,
    answer,
    fit,
    tests,
    readings: readingsOf(pointsOf(book, rotorId, answer), tests, fit),
    phiFree: psi === null ? null : firstPositiveZero(psi),
    estimateOff: estimateOff(book, rotorId),
  };
}

/** Readings that make no curve, or are all set aside, are shown all the same. */
function pointsOf(book: Book, rotorId: string, answer: RotorAnswer): readonly FamilyPoint[] {
  if (answer.basis !== "missing" && answer.points.length > 0) return answer.points;
  return familyPoints(book, rotorId);
}

function readingsOf(
  points: readonly FamilyPoint[],
  tests: readonly StoredOf<"tests">[],
  fit: RotorFit | null,
): FamilyReading[] {
  const weighted = points.every((point) => point.setAside !== null || point.weight !== undefined);
  let used = -1;
  return points.flatMap((point) => {
    const [seen] = rotorPoints(point.diameter ?? 0, [point]);
    if (point.setAside === null) used += 1;
    return [
      {
        key: `${point.testId}#${point.row}`,
        testId: point.testId,
        row: point.row,
        test: tests.findIndex((test) => test.id === point.testId),
        aside: point.setAside,
        outlier: point.setAside === null && (fit?.outliers.includes(used) ?? false),
        phi: seen.phi,
        psi: seen.psi,
        lambda: seen.lambda,
        rpm: point.rpm,
        diameter: point.diameter ?? 0,
        density: point.density ?? STANDARD_DENSITY,
        flow: point.flow,
        pressure: point.pressure,
        weight: weighted ? (point.weight ?? 1) : 1,
        residual: fit && fit.dof > 0 ? (seen.psi - evaluatePolynomial(fit.psi, seen.phi)) / fit.psi[0] : null,
      },
    ];
  });
}

/** @returns the readings that take part in the fit */
export function readingsInUse(family: Pick<RotorFamily, "readings">): FamilyReading[] {
  return family.readings.filter((reading) => reading.aside === null);
}
