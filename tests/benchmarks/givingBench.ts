import { isMovable, suctionAtGap, writeGapAsSet } from "#shared/decide/choose/gapLaw.ts";
import { type Prepared, prepare } from "#shared/decide/choose/prepare.ts";
import type { Problem } from "#shared/decide/choose/problem.ts";
import { solveChunk } from "#shared/decide/choose/solveChunk.ts";
import { solveCombination } from "#shared/decide/choose/solveCombination.ts";
import { createWork, writeCombination } from "#shared/decide/choose/work.ts";
import { writeFastCase } from "#shared/physics/point/fastCase.ts";
import { sweepQuestion } from "./sweepQuestion.ts";

const SETS = 10_000;
const RUNS = 5;
/** Processor time that is told from another to a few percent [µs]. */
const LEAST_TIME = 1e5;
/** Of the running gear [N/m]. */
const STIFFNESS = 12_000;
const JOINT = { name: "joint", depth: 4e-4, width: 3e-3, met: "either" } as const;

/** A search over joints on running gear that gives, one thread. */
export interface GivingTimes {
  readonly sets: number;
  /** gaps at which a set is judged: as set and each mode's own, on the surface and over the joint either way */
  readonly points: number;
  /** over bare solves at as many gaps of each combination [-] */
  readonly overPoints: number;
  /** over one bare solve of each combination [-] */
  readonly overOne: number;
}

function question(): Problem {
  const { fixed, skirts, wants, ...rest } = sweepQuestion(1);
  return {
    ...rest,
    fixed: { ...fixed, vehicle: { ...fixed.vehicle, verticalStiffness: STIFFNESS } },
    skirts: skirts.map((skirt) => ({ ...skirt, joints: { span: 0.06, joints: [JOINT] } })),
    wants: { ...wants, leastCrossing: 1 },
  };
}

function gapsOf({ fittedSkirts: [{ giving, over }] }: Prepared) {
  if (!giving) throw new Error("The question's running gear doesn't give.");
  const { parked, driving } = giving;
  const own = [parked, driving].reduce(
    (sum, { fixed, scanned }) => sum + fixed.length / 2 + (scanned ? 1 : 0),
    0,
  );
  return { own, places: 1 + over.length };
}

/** Bare solves of every combination, at some gaps more in each place. */
function bare(prepared: Prepared, gaps: number): void {
  const work = createWork(prepared);
  for (let index = 0; index < SETS; index++) {
    writeCombination(prepared, work, index);
    if (solveCombination(prepared, work, index, (index / 1024) | 0) !== 0 || gaps === 0) continue;
    const fitted = prepared.fittedSkirts[work.fittedSkirt];
    for (const place of [fitted, ...fitted.over]) {
      const { fast } = place;
      if (!fast || !isMovable(place)) continue;
      const moving = { prepared, work, fitted, place, fast };
      writeFastCase(work.c, fast);
      work.aside.set(work.solution);
      for (let i = 0; i <= gaps; i++) suctionAtGap(moving, place.skirt.gap * (0.6 + (0.8 * i) / gaps));
      writeGapAsSet(moving);
    }
  }
}

/** The least of a few, by the processor's time, which counts in steps of some milliseconds: whatever else a machine does only ever slows a run. */
function least(work: () => void): number {
  const once = () => {
    const before = process.cpuUsage();
    let [times, user] = [0, 0];
    do {
      work();
      times++;
      user = process.cpuUsage(before).user;
    } while (user < LEAST_TIME);
    return user / times;
  };
  return Math.min(...Array.from({ length: RUNS }, once));
}

/** @returns what a search over joints on giving gear costs over its bare solves, within one process */
export function timedGiving(): GivingTimes {
  const prepared = prepare(question());
  const { own, places } = gapsOf(prepared);
  const search = least(() => solveChunk(prepared, 0, SETS));
  const one = least(() => bare(prepared, 0));
  const all = least(() => bare(prepared, own));
  return { sets: SETS, points: places * (own + 1), overPoints: search / all, overOne: search / one };
}
