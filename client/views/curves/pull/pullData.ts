import { type Book, findById, type StoredTest, testsOf } from "../../../../shared/book/book.ts";
import { type PullPrediction, predictedPull } from "../../../../shared/book/pullPrediction.ts";
import { pullTrials } from "../../../../shared/book/readings/pull.ts";
import { fitPullTrend } from "../../../../shared/fit/pullTrend.ts";
import { asProblem } from "../../../../shared/numeric/errors.ts";
import type { Note } from "../../../../shared/physics/note.ts";
import type { Source } from "../chosen.ts";
import { testName } from "../typed.ts";

export interface PullPoint extends Source {
  readonly key: string;
  readonly test: number;
  readonly aside: string | null;
  /** [N] */
  readonly held: number;
  readonly letGo: number | null;
  /** at the pack's terminals; null where it was not read [V] */
  readonly voltage: number | null;
  /** null where the parts don't say enough [N] */
  readonly predicted: number | null;
}

/** Measured over predicted pull [-]. */
export interface PullRatio {
  readonly median: number;
  /** 95 % of the median; null where the trials set no end */
  readonly interval: readonly [number, number] | null;
  readonly warnings: readonly Note[];
}

export interface PullPage {
  readonly points: readonly PullPoint[];
  readonly tests: readonly { readonly id: string; readonly title: string }[];
  /** what keeps a prediction from being made, once each */
  readonly missing: readonly string[];
  /** measured over predicted; null where too few brackets say it */
  readonly ratio: PullRatio | null;
  readonly problem: string | null;
}

function pointsOf(book: Book, test: StoredTest<"pull">, index: number): (PullPoint & PullPrediction)[] {
  return pullTrials(test.data).map((trial) => ({
    key: `${test.id}#${trial.row}`,
    testId: test.id,
    row: trial.row,
    test: index,
    aside: trial.setAside,
    held: trial.held,
    letGo: trial.letGo,
    voltage: trial.voltage,
    ...predictedPull(book, test.data, trial),
  }));
}

function ratioOf(points: readonly PullPoint[]): Pick<PullPage, "ratio" | "problem"> {
  const trials = points.flatMap(({ aside, held, letGo, predicted }) =>
    aside === null && predicted !== null && predicted > 0 ? [{ held, letGo, predicted }] : [],
  );
  if (trials.length === 0) return { ratio: null, problem: null };
  const fitted = asProblem(() => fitPullTrend(trials, trials[0].predicted).ratio);
  if ("problem" in fitted) return { ratio: null, problem: fitted.problem };
  const { median, meanInterval, warnings } = fitted.answered;
  const interval = meanInterval && ([Math.exp(meanInterval[0]), Math.exp(meanInterval[1])] as const);
  return { ratio: { median, interval, warnings }, problem: null };
}

/** @returns every pull with this skirt or on this surface beside what its parts are predicted to pull */
export function pullPage(book: Book, part: "skirt" | "surface", id: string): PullPage {
  const tests = testsOf(book, "pull").filter((test) => test.data[part] === id);
  const points = tests.flatMap((test, index) => pointsOf(book, test, index));
  return {
    points,
    tests: tests.map((test) => {
      const stored = findById(book.tests, test.id);
      return { id: test.id, title: stored ? testName(stored) : test.id };
    }),
    missing: [...new Set(points.flatMap((point) => point.missing))],
    ...ratioOf(points),
  };
}

/** @returns of the pulls that count, how many brackets hold their prediction, lie above it, lie below it */
export function agreement(points: readonly PullPoint[]): { meets: number; above: number; below: number } {
  const count = { meets: 0, above: 0, below: 0 };
  for (const { aside, held, letGo, predicted } of points) {
    if (aside !== null || predicted === null) continue;
    if (held > predicted) count.above += 1;
    else if (letGo !== null && letGo < predicted) count.below += 1;
    else count.meets += 1;
  }
  return count;
}
