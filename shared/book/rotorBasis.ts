import { fitRotor, type RotorFit } from "../fit/rotorFit.ts";
import { usualDensity } from "../fit/rotorPoints.ts";
import { rotorWeights } from "../fit/rotorWeights.ts";
import type { StoredOf } from "../model/record.ts";
import { NotEnoughDataError } from "../numeric/errors.ts";
import { STANDARD_AIR_DENSITY } from "../physics/constants.ts";
import { tipSpeed } from "../physics/fanlaws/coefficients.ts";
import { RPM } from "../physics/motor.ts";
import type { TestedAt } from "../physics/point/sizeLaw.ts";
import { type Book, findById, oncePerBook, testsOf } from "./book.ts";
import { drawnRotor } from "./drawnRotor.ts";
import type { Missing } from "./missing.ts";
import { motorBasis } from "./motorBasis.ts";
import { type CurveReading, curveReadings } from "./readings/curve.ts";
import { correctionAt, nearestSize } from "./testedSizes.ts";

/** A reading with the test it stands in. */
export type FamilyPoint = CurveReading & { readonly testId: string };

/** Curve of a family and what it rests on. */
export interface RotorBasis {
  readonly basis: "measured" | "two-point" | "estimated";
  readonly psi: readonly number[];
  readonly lambda: readonly number[] | null;
  readonly phiMin: number;
  readonly phiMax: number;
  /** null for an estimate */
  readonly fit: RotorFit | null;
  /** every reading, those set aside included; those in the fit carry the weight that they had in it, where one was given */
  readonly points: readonly FamilyPoint[];
  /** by rising size [m] */
  readonly testedDiameters: readonly number[];
  readonly testIds: readonly string[];
}

export type RotorAnswer = RotorBasis | { readonly basis: "missing"; readonly missing: Missing };

/** Fitted range given to an estimate: it was tested nowhere. */
const ESTIMATE_RANGE = 1e-9;

/** @returns every reading of a rotor's curve tests, those set aside included, whether or not they make a curve */
export function familyPoints(book: Book, rotorId: string): FamilyPoint[] {
  const points = testsOf(book, "curve")
    .filter((test) => test.data.rotor === rotorId)
    .flatMap((test, index) => {
      const motor = test.data.motor ? motorBasis(book, test.data.motor) : null;
      return curveReadings(test.data, motor?.constants ?? null).map((reading) => ({
        ...reading,
        test: index,
        testId: test.id,
      }));
    });
  const density = usualDensity(points);
  return points.map((point) => ({ ...point, density: point.density ?? density }));
}

/** Weights count only where every reading has one; a mixture would weigh by who stated an uncertainty. */
function weighed(used: readonly FamilyPoint[], diameter: number): readonly FamilyPoint[] {
  const doubts = used.flatMap((point) => (point.doubt ? [point.doubt] : []));
  if (doubts.length < used.length) return used;
  const first = fitRotor({ diameter, points: used });
  const weights = rotorWeights(diameter, used, doubts, first.psi);
  return used.map((point, i) => ({ ...point, weight: weights[i] }));
}

function fitted(points: readonly FamilyPoint[]): RotorAnswer {
  const used = points.filter((point) => point.setAside === null);
  const diameters = used.map((point) => point.diameter ?? 0);
  const weighted = weighed(used, diameters[0]);
  const fit = fitRotor({ diameter: diameters[0], points: weighted });
  const inFit = new Map(used.map((point, i) => [point, weighted[i]]));
  return {
    basis: fit.warnings.some((note) => note.code === "two-point") ? "two-point" : "measured",
    psi: fit.psi,
    lambda: fit.lambda,
    phiMin: fit.phiMin,
    phiMax: fit.phiMax,
    fit,
    points: points.map((point) => inFit.get(point) ?? point),
    testedDiameters: [...new Set(diameters)].sort((a, b) => a - b),
    testIds: [...new Set(points.map((point) => point.testId))],
  };
}

function estimated({ data: rotor }: StoredOf<"rotors">): RotorAnswer {
  const curve = drawnRotor(rotor);
  if (!curve) {
    const why =
      rotor.form === "axial"
        ? "an axial rotor can't be estimated from its geometry"
        : "no geometry to estimate from";
    const message = `No curve test of ${rotor.name} is logged, and ${why}: take a curve test, blocked, open and between.`;
    return { basis: "missing", missing: { path: "rotor", message, test: "curve" } };
  }
  return {
    basis: "estimated",
    psi: curve.psi,
    lambda: curve.lambda,
    phiMin: 0,
    phiMax: ESTIMATE_RANGE,
    fit: null,
    points: [],
    testedDiameters: [],
    testIds: [],
  };
}

function answerFor(book: Book, rotorId: string): RotorAnswer {
  const rotor = findById(book.rotors, rotorId);
  if (!rotor) return { basis: "missing", missing: { path: "rotor", message: "The book has no such rotor." } };
  const points = familyPoints(book, rotorId);
  if (!points.some((point) => point.setAside === null)) return estimated(rotor);
  try {
    return fitted(points);
  } catch (error) {
    if (!(error instanceof NotEnoughDataError)) throw error;
    return { basis: "missing", missing: { path: "rotor", message: error.message, test: "curve" } };
  }
}

/** @returns the family's curve from all its curve tests, else an estimate from its geometry, else what is missing */
export function rotorBasis(book: Book, rotorId: string): RotorAnswer {
  return oncePerBook(book, `rotor ${rotorId}`, () => answerFor(book, rotorId));
}

/** @returns the tested size nearest in proportion [m]; null where none was tested */
export function nearestTested(basis: Pick<RotorBasis, "testedDiameters">, diameter: number): number | null {
  const sizes = basis.testedDiameters.map((testedDiameter) => ({ testedDiameter }));
  return nearestSize(sizes, diameter)?.testedDiameter ?? null;
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)];
}

/** @returns each tested size with the middle of its tip speeds and air; none without λ, which the size correction needs */
export function testedSizes(basis: RotorBasis): TestedAt[] {
  if (!basis.lambda) return [];
  return basis.testedDiameters.map((testedDiameter) => {
    const there = basis.points.filter(
      (point) => point.setAside === null && point.diameter === testedDiameter,
    );
    return {
      testedDiameter,
      testedTipSpeed: median(there.map((point) => tipSpeed(testedDiameter, point.rpm * RPM))),
      testedDensity: median(there.map((point) => point.density ?? STANDARD_AIR_DENSITY)),
    };
  });
}

/**
 * Where the curve was tested, for the size correction; null at a tested size, without λ or without a test.
 *
 * @param basis - curve of the family
 * @param diameter - of the rotor asked for [m]
 * @returns tested diameter [m] and the middle of its tip speeds [m/s]
 */
export function testedAt(basis: RotorBasis, diameter: number): TestedAt | null {
  return correctionAt(testedSizes(basis), diameter);
}
