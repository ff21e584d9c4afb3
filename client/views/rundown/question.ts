import { jointsUnder } from "../../../shared/book/jointsUnder.ts";
import { readUnit } from "../../../shared/book/readUnit.ts";
import type { Book } from "../../../shared/book/resolve.ts";
import { runInput } from "../../../shared/book/runInput.ts";
import type { JointsUnder } from "../../../shared/decide/joints/crossed.ts";
import type { Build } from "../../../shared/model/build.ts";
import type { CycleSegment, RundownInput } from "../../../shared/physics/rundown.ts";
import { attitudeRows, type Outcome } from "../../state/outcome.ts";
import type { KeptUnits } from "./keep/keepWords.ts";
import type { Wish } from "./keep/wish.ts";

/** An attitude to answer for. */
export interface Named {
  readonly key: string;
  /** as the table says it: "Roof pane" */
  readonly title: string;
  /** as a sentence says it: "the roof pane" */
  readonly name: string;
  readonly angle: number;
}

/** What is asked of a run, all of it plain data: it goes to another thread. */
export interface Question {
  readonly input: RundownInput;
  readonly named: readonly Named[];
  readonly windingEstimated: boolean;
  /** what a controller keeps; null: the throttle is steady */
  readonly keep: Wish | null;
  /** in which a controller is set */
  readonly units: KeptUnits;
  /** joints of the surface; null: none */
  readonly joints: JointsUnder | null;
}

/** What the view's own handles set. */
export interface Asked {
  /** z₀ [-] */
  readonly startCharge: number;
  readonly targetMargin: number;
  /** tried in the place of the build's own */
  readonly cycle?: readonly CycleSegment[];
  readonly keep?: Wish | null;
}

/** A charge as it comes off the charger [-]. */
const FULL = 1;

/** @returns a build's own run: from a full charge, to the margin that it wants */
export const fromFull = ({ targetMargin }: Pick<Build, "targetMargin">): Asked => ({
  startCharge: FULL,
  targetMargin,
});

/** @returns the run that a build asks for; null where the build has no numbers yet */
export function questionOf(book: Book, outcome: Outcome, asked: Asked): Question | null {
  const { build, resolved } = outcome;
  const run = resolved && runInput(build, resolved);
  if (!run || !resolved.motor) return null;
  const { keep = null, startCharge, targetMargin, cycle = build.cycle } = asked;
  return {
    input: { ...run, startCharge, targetMargin, cycle },
    keep,
    units: { pressure: readUnit(book, "pressure"), thrust: readUnit(book, "load") },
    joints: run.skirt ? jointsUnder(book, build) : null,
    windingEstimated: resolved.motor.thermal.basis === "estimated",
    named: attitudeRows(outcome).map(({ title, name, angle }) => ({
      key: `at ${angle}`,
      title,
      name,
      angle,
    })),
  };
}
