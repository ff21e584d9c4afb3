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
import { correctionAt, nearestSize, testedTipSpeeds } from "./testedSizes.ts";

/** A reading with the test it stands in. */
export type FamilyPoint = CurveReading & { readonly testId: string };

/** Curve of a family and what it rests on. */
export interface RotorBasis {
  readonly basis: "measured" | "two-point" | "estimated";
  readonly psi: readonly number[];
  readonly lambda: readonly number[] | null;
  readonly phiMin: number;
  readonly phiMax: number;
  /** null for an estimate, and of a curve that came without its tests */
  readonly fit: RotorFit | null;
  /** every reading, those set aside included; those in the fit carry the weight that they had in it, where one was given; none of a curve that came without its tests */
  readonly points: readonly FamilyPoint[];
  /** by rising size [m] */
  readonly testedDiameters: readonly number[];
  /** each tested size with the middle of its tip speeds and air; none without λ, which the size correction needs */
  readonly sizes: readonly TestedAt[];
  /** least and greatest of the readings in use; null for an estimate [m/s] */
  readonly tipSpeeds: readonly [number, number] | null;
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

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)];
}

function testedSizes(used: readonly FamilyPoint[], testedDiameters: readonly number[]): TestedAt[] {
  return testedDiameters.map((testedDiameter) => {
    const there = used.filter((point) => point.diameter === testedDiameter);
    return {
      testedDiameter,
      testedTipSpeed: median(there.map((point) => tipSpeed(testedDiameter, point.rpm * RPM))),
      testedDensity: median(there.map((point) => point.density ?? STANDARD_AIR_DENSITY)),
    };
  });
}

function fitted(points: readonly FamilyPoint[]): RotorAnswer {
  const used = points.filter((point) => point.setAside === null);
  const diameters = used.map((point) => point.diameter ?? 0);
  const weighted = weighed(used, diameters[0]);
  const fit = fitRotor({ diameter: diameters[0], points: weighted });
  const inFit = new Map(used.map((point, i) => [point, weighted[i]]));
  const testedDiameters = [...new Set(diameters)].sort((a, b) => a - b);
  return {
    basis: fit.warnings.some((note) => note.code === "two-point") ? "two-point" : "measured",
    psi: fit.psi,
    lambda: fit.lambda,
    phiMin: fit.phiMin,
    phiMax: fit.phiMax,
    fit,
    points: points.map((point) => inFit.get(point) ?? point),
    testedDiameters,
    sizes: fit.lambda ? testedSizes(used, testedDiameters) : [],
    tipSpeeds: testedTipSpeeds(used, testedDiameters),
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
    sizes: [],
    tipSpeeds: null,
    testIds: [],
  };
}

/** @returns under which key a book has a rotor's curve */
export const rotorKey = (id: string): string => `rotor ${id}`;

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
  return oncePerBook(book, rotorKey(rotorId), () => answerFor(book, rotorId));
}

/** @returns the tested size nearest in proportion [m]; null where none was tested */
export function nearestTested(basis: Pick<RotorBasis, "testedDiameters">, diameter: number): number | null {
  const sizes = basis.testedDiameters.map((testedDiameter) => ({ testedDiameter }));
  return nearestSize(sizes, diameter)?.testedDiameter ?? null;
}

/**
 * Where the curve was tested, for the size correction; null at a tested size, without λ or without a test.
 *
 * @param basis - curve of the family
 * @param diameter - of the rotor asked for [m]
 * @returns tested diameter [m] and the middle of its tip speeds [m/s]
 */
export function testedAt(basis: RotorBasis, diameter: number): TestedAt | null {
  return correctionAt(basis.sizes, diameter);
}
