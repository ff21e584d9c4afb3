import type { Build } from "../../model/build.ts";
import type { BenchTest, TestKind } from "../../model/tests/index.ts";
import { normalQuantile } from "../../numeric/normalQuantile.ts";
import type { Book } from "../book.ts";
import type { Resolved } from "../resolve.ts";

/** A build whose next test is looked for. */
export interface Asked {
  readonly book: Book;
  readonly build: Build;
  readonly resolved: Resolved;
}

/** Names of what could be measured next. */
export type PlanKey =
  | "pull-straight-off"
  | "pull-along"
  | "leak"
  | "friction-wheels"
  | "friction-skirt"
  | "curve"
  | "plate"
  | "thrust"
  | "motor"
  | "discharge"
  | "weigh"
  | "joint";

/** Something that could be measured next: what is thought to come out of it, as it would be logged. */
export interface Planned {
  readonly key: PlanKey;
  /** kind of bench test; null: the scale */
  readonly kind: TestKind | null;
  /** "Six pulls straight off, Square lip on Side pane" */
  readonly title: string;
  /** what it takes, in words */
  readonly takes: string;
  /** stored tests that it corrects, the newest first; none where it is a test of its own */
  readonly corrects?: readonly string[];
  /** as the book would be with it */
  readonly book: Book;
  /** as the build would be with it */
  readonly build: Build;
}

/** How a test of a turning rotor is planned: the speeds over that of the build's own point, and what sets it apart from others planned with it. */
export interface SpeedPlan {
  /** [-] */
  readonly speeds: readonly number[];
  readonly name: string;
}

/** The day of a test that was not made: it stands in no list. */
const NO_DAY = "2000-01-01";

/** What every planned test begins with. */
export const plannedHead = { title: "", date: NO_DAY, note: "" } as const;

/** @returns the book with one test more */
export function withTest(book: Book, key: string, data: BenchTest): Book {
  const at = `${NO_DAY}T00:00:00.000Z`;
  const test = { id: `planned-${key}`, revision: 1, createdAt: at, updatedAt: at, data };
  return { ...book, tests: [...book.tests, test] };
}

/** Steps through the places so that a row's scatter does not follow its order: the golden section of 1. */
const GOLDEN = 0.6180339887498949;

/**
 * Scatter of planned readings: the middles of equal shares of the standard normal distribution, in mixed order.
 *
 *     z = Φ⁻¹((i + ½)/n), scaled to a standard deviation of 1 by n − 1
 *
 * @param count - readings [-]
 * @returns numbers of mean 0 and standard deviation 1 [-]; all 0 for a single reading
 */
export function scatter(count: number): number[] {
  if (count < 2) return [0];
  const scores = Array.from({ length: count }, (_, i) => normalQuantile((i + 0.5) / count));
  const sd = Math.sqrt(scores.reduce((sum, z) => sum + z * z, 0) / (count - 1));
  const mixed = Array.from({ length: count }, (_, i) => i).sort(
    (a, b) => ((a * GOLDEN) % 1) - ((b * GOLDEN) % 1),
  );
  return mixed.map((i) => scores[i] / sd);
}
