import { solvedSuctions } from "#shared/fit/calibration/suctions.ts";
import { suctionsOver } from "#shared/fit/calibration/suctionsOver.ts";
import { calibrate, gapWithoutEach } from "#shared/fit/calibration.ts";
import { offsetRound } from "#shared/fit/offsetRound.ts";
import { rotorPoints } from "#shared/fit/rotorPoints.ts";
import { normals, pulledOnce, RIG } from "#tests/support/calibrationRig.ts";
import { readingAt } from "#tests/support/rotorReadings.ts";
import { secondsOf } from "./timing.ts";

/** What a short way costs of the plain way to the same answer; the answers are compared by the tests. */
export interface Costs {
  /** the gap without each of 36 pulls in turn, over one calibration [-] */
  readonly withoutEach: number;
  /** suctions over the gaps of a curve that dips, over solving every point [-] */
  readonly suctions: number;
  /** a round of offsets of 160 tests, over one of 20 [-] */
  readonly offsets: number;
}

/** The least of a few: whatever else a machine does only ever slows a run. */
const RUNS = 5;

async function leastRatio(short: () => unknown, plain: () => unknown): Promise<number> {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < RUNS; i++) least = Math.min(least, (await secondsOf(short)) / (await secondsOf(plain)));
  return least;
}

function timedWithoutEach(): Promise<number> {
  const prior = { gap: { mean: 6e-4, sd: 2e-4 }, friction: { mean: 0.7, sd: 0.15 } };
  const truth = { gap: 4.5e-4, friction: 0.62, scatter: 0.05 };
  const normal = normals(31);
  const directions = ["straight-off", "ceiling", "along"] as const;
  const pulls = Array.from({ length: 36 }, (_, i) =>
    pulledOnce(directions[i % 3], 4.15 - 0.05 * (i % 9), truth, normal),
  );
  const groups = pulls.map((_, i) => [i]);
  return leastRatio(
    () => gapWithoutEach({ prior, pulls }, groups),
    () => calibrate({ prior, pulls: pulls.slice(1) }),
  );
}

function timedSuctions(): Promise<number> {
  const waved = { ...RIG, rotor: { ...RIG.rotor, psi: [0.5, -11.4167, 87.5, -183.3333] } };
  const gaps = Array.from({ length: 65 }, (_, i) => (i * 3.2e-3) / 64);
  const tenTimes = (run: () => unknown) => () => {
    for (let i = 0; i < 10; i++) run();
  };
  return leastRatio(
    tenTimes(() => suctionsOver(waved, gaps)),
    tenTimes(() => solvedSuctions(waved, gaps)),
  );
}

function timedOffsets(): Promise<number> {
  const round = (count: number) => {
    const points = Array.from({ length: count }, (_, test) =>
      [0, 0.04, 0.08, 0.12, 0.16, 0.2].map((phi, i) => {
        const psi = 1 - 0.5 * phi - 16 * phi ** 2 + 0.002 * ((7 * i + 3 * test) % 11);
        return { ...readingAt({ phi, psi, rpm: 15_000 + 900 * test }), test, weight: 1 + (test % 3) };
      }),
    );
    const of = rotorPoints(0.05, points.flat());
    const tests = Array.from({ length: count }, (_, k) => k);
    return () => offsetRound(of, tests, [1, -0.5, -16]);
  };
  return leastRatio(round(160), round(20));
}

/** Ratios within one process, the code warm after its first run. */
export async function timedCosts(): Promise<Costs> {
  return {
    withoutEach: await timedWithoutEach(),
    suctions: await timedSuctions(),
    offsets: await timedOffsets(),
  };
}
