import { type Book, findById } from "../../../../shared/book/book.ts";
import {
  type BuildCalibration,
  type Contribution,
  calibrationOf,
  contributionsOf,
  type RowOfTest,
} from "../../../../shared/book/calibration.ts";
import type { Calibration, LeakResidual, PullResidual } from "../../../../shared/fit/calibration.ts";
import type { StoredOf } from "../../../../shared/model/record.ts";

/** A skirt on a surface whose pull tests make a calibration. */
export interface Pair {
  readonly skirt: StoredOf<"skirts">;
  readonly surface: StoredOf<"surfaces">;
  readonly calibration: BuildCalibration;
  /** names of the builds that stand on it */
  readonly builds: readonly string[];
}

/** A pull or leak reading, with its prediction at the gap as set and as calibrated. */
export type PullReading = PullResidual & RowOfTest & { readonly key: string };
export type LeakReading = LeakResidual & RowOfTest & { readonly key: string };

/** Everything that the section shows of one calibration that has an answer. */
export interface CalibrationPage {
  readonly pair: Pair;
  readonly answer: Calibration;
  readonly pulls: readonly PullReading[];
  readonly leaks: readonly LeakReading[];
  readonly contributions: readonly Contribution[];
  readonly tests: readonly StoredOf<"tests">[];
}

/** Uncertainties stated in a build count as they do in Match: the first build of the pair says them. */
function pairOf(book: Book, skirt: StoredOf<"skirts">, surface: StoredOf<"surfaces">): Pair[] {
  const builds = book.builds.filter(({ data }) => data.skirt === skirt.id && data.surface === surface.id);
  const uncertainty = builds[0]?.data.uncertainty ?? {};
  const calibration = calibrationOf(book, { skirt: skirt.id, surface: surface.id, uncertainty });
  return calibration ? [{ skirt, surface, calibration, builds: builds.map(({ data }) => data.name) }] : [];
}

/** @returns the pairs of skirt and surface with this part that have a calibration, those that a build stands on first */
export function pairsWith(book: Book, part: "skirt" | "surface", id: string): Pair[] {
  const skirts = book.skirts.filter((skirt) => part === "surface" || skirt.id === id);
  const surfaces = book.surfaces.filter((surface) => part === "skirt" || surface.id === id);
  const pairs = skirts.flatMap((skirt) => surfaces.flatMap((surface) => pairOf(book, skirt, surface)));
  return pairs.sort((a, b) => Number(b.builds.length > 0) - Number(a.builds.length > 0));
}

/** @returns whether pulls with this part are set against their predictions by a calibration */
export function isCompared(book: Book, part: "skirt" | "surface", id: string): boolean {
  return pairsWith(book, part, id).some(({ calibration }) => calibration.answer !== null);
}

const keyed = <T>(residual: T, place: RowOfTest) => ({
  ...residual,
  ...place,
  key: `${place.testId}#${place.row}`,
});

/** As the book lists its tests, each test's readings as they were logged. */
function inBookOrder<T extends RowOfTest>(book: Book, readings: readonly T[]): T[] {
  const places = new Map(book.tests.map(({ id }, place) => [id, place]));
  const placeOf = ({ testId }: RowOfTest) => places.get(testId) ?? 0;
  return readings.toSorted((a, b) => placeOf(a) - placeOf(b) || a.row - b.row);
}

/** @returns readings and contributions of a pair; null where its tests can't be brought together */
export function calibrationPage(book: Book, pair: Pair): CalibrationPage | null {
  const { answer, pulls, leaks, testIds } = pair.calibration;
  if (!answer) return null;
  return {
    pair,
    answer,
    pulls: inBookOrder(
      book,
      answer.residuals.map((residual) => keyed(residual, pulls[residual.pull])),
    ),
    leaks: inBookOrder(
      book,
      answer.leakResiduals.map((residual, i) => keyed(residual, leaks[i])),
    ),
    contributions: contributionsOf(pair.calibration),
    tests: testIds.flatMap((id) => findById(book.tests, id) ?? []),
  };
}
