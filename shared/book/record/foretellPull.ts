import { figureSpread } from "../../decide/figureSpread.ts";
import { emptyPoint, pointLaw } from "../../decide/sampledPoint.ts";
import type { Uncertainties } from "../../decide/uncertainInput.ts";
import type { Foretold } from "../../model/api/record.ts";
import type { PullTest } from "../../model/tests/pull.ts";
import { STANDARD_GRAVITY } from "../../physics/constants.ts";
import type { AnyPredictInput } from "../../physics/predictAny.ts";
import { toSI } from "../../units/quantity.ts";
import type { Book } from "../book.ts";
import { buildUncertainty } from "../buildUncertainty.ts";
import { atTerminals, rigAsBuild, sharedFriction } from "../pullPrediction.ts";
import { type PullTrial, pullTrials } from "../readings/pull.ts";
import { inUse } from "../readings/reading.ts";
import { type Resolved, resolveBuild, solvable } from "../resolve.ts";
import { withScatter } from "./readingScatter.ts";
import { withoutPack } from "./withoutPack.ts";

/** Scatter of one pull before any told it [-]. As calibrations hold it: docs/method/calibration.md. */
const USUAL_SCATTER = 0.05;

type Row = Omit<Foretold, "basis">;

/** A rig at one shim, and what is uncertain in it. */
interface Rig {
  readonly resolved: Resolved;
  readonly input: AnyPredictInput | null;
  readonly asked: Uncertainties;
}

function rigAt(book: Book, test: PullTest, trial: PullTrial): Rig {
  const build = rigAsBuild(book, test, trial);
  const resolved = resolveBuild(book, build);
  const { sources: _said, ...asked } = buildUncertainty(book, build, resolved);
  return { resolved, input: solvable(resolved), asked };
}

function bandOf({ input, asked, resolved }: Rig, test: PullTest, { voltage }: PullTrial) {
  if (!input) return null;
  const rigForce = toSI(test.rigMass, "mass") * STANDARD_GRAVITY;
  const band = figureSpread(
    atTerminals(input, voltage),
    voltage === null ? asked : withoutPack(asked),
    (copy) => {
      const [law, at] = [pointLaw(copy), emptyPoint()];
      return () => {
        law(at);
        return test.direction === "along"
          ? sharedFriction(copy.vehicle) * (at.suction + rigForce)
          : at.suction;
      };
    },
  );
  return withScatter(band, resolved.calibration?.answer?.scatter ?? USUAL_SCATTER);
}

/**
 * What the book as it is predicts for pulls of a test, each with its scatter.
 *
 *     as {@link predictedPull}, with gap, friction and κ as the book's other tests tell them
 *
 * @param book - without the pulls in question
 * @param test - whose pulls they are
 * @param wanted - their rows [-]
 * @returns 5, 50 and 95 % of the load, row by row [N]; none of rows whose rig the book doesn't know well enough
 * @throws {OutOfRangeError} on a number in the book that can't be
 */
export function foretellPull(book: Book, test: PullTest, wanted: ReadonlySet<number>): Row[] {
  const rigs = new Map<number | null, Rig>();
  const bands = new Map<string, ReturnType<typeof bandOf>>();
  return inUse(pullTrials(test)).flatMap((trial) => {
    if (!wanted.has(trial.row)) return [];
    const rig = rigs.get(trial.gap) ?? rigAt(book, test, trial);
    rigs.set(trial.gap, rig);
    const key = `${trial.gap} ${trial.voltage}`;
    const band = bands.get(key) ?? bandOf(rig, test, trial);
    bands.set(key, band);
    return band ? [{ row: trial.row, figure: "pull", ...band, chance: null }] : [];
  });
}
