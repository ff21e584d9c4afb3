import { assemble, type PredictInput } from "../../physics/assembly.ts";
import { pullOf, rideHeightOf } from "../../physics/hold/pull.ts";
import { WARM_RESULT } from "../../physics/point/newtonWarm.ts";
import { suctionByGap } from "../../physics/pullByGap.ts";
import { wantedMargin } from "../wanted.ts";
import { inputOf } from "./input.ts";
import { placesOf } from "./places.ts";
import type { Prepared } from "./prepare.ts";
import type { WantedAttitude } from "./problem.ts";
import type { Work } from "./work.ts";

/** Margins of a set, one object a thread. */
export interface Margins {
  parked: number;
  driving: number;
}

/**
 * Margins of a solved set whose running gear gives, each mode judged at its own limit, by the general solver.
 *
 *     the least of {@link wantedMargin} over the wanted attitudes
 *
 * @param prepared - the question
 * @param work - this thread's memory, the set's solution in it
 * @param index - of the set [-]
 * @param suction - F_s with the gap as set [N]
 * @param out - written [-]; infinite where no suction is needed
 * @returns nothing
 *
 * Valid for any set. Source: docs/method/holding.md
 */
export function givingMargins(
  prepared: Prepared,
  work: Work,
  index: number,
  suction: number,
  out: Margins,
): void {
  const { problem, radix } = prepared;
  const input: PredictInput = inputOf(problem, placesOf(radix, index));
  const [phi, winding] = [work.solution[WARM_RESULT.phi], work.solution[WARM_RESULT.windingResistance]];
  const byGap = suctionByGap(input, assemble(input), { phi, winding });
  const pull = pullOf(suction, rideHeightOf(input.vehicle, input.skirt.gap), byGap);
  const least = (mode: WantedAttitude["mode"]) =>
    problem.wants.attitudes
      .filter((attitude) => attitude.mode === mode)
      .reduce(
        (margin, { angle }) => Math.min(margin, wantedMargin(input.vehicle, pull, { attitude: angle, mode })),
        Number.POSITIVE_INFINITY,
      );
  out.parked = least("parked");
  out.driving = least("driving");
}
