import { assemble, type PredictInput, suctionAt } from "../../physics/assembly.ts";
import { type Pull, pullOf, rideHeightOf, rigidPull } from "../../physics/hold/pull.ts";
import { operatingPoint, operatingPoints } from "../../physics/operatingPoint.ts";
import { suctionByGap } from "../../physics/pullByGap.ts";
import { wantedMargin } from "../wanted.ts";
import type { Prepared } from "./prepare.ts";
import type { WantedAttitude } from "./problem.ts";

/** The pull of a build by the general solver; 0 where its rotor stands. */
function generalPull(input: PredictInput): Pull {
  const assembly = assemble(input);
  const point = operatingPoint(operatingPoints(assembly.machine, assembly.leak));
  if (!point) return rigidPull(0);
  const suction = Math.max(0, suctionAt(input, assembly, point.pressure, point.flow));
  const rideHeight = rideHeightOf(input.vehicle, input.skirt.gap);
  return pullOf(suction, rideHeight, suctionByGap(input, assembly, point));
}

/**
 * Least wanted margins of a build by the general solver.
 *
 *     the least of {@link wantedMargin} over the wanted attitudes, each mode at its own gap where the running gear gives
 *
 * @param prepared - the question
 * @param input - the build, SI
 * @returns function from a mode to its least margin [-]; infinite where no suction is needed or none is wanted
 * @throws {OutOfRangeError} {NotEnoughDataError} as a prediction of it
 *
 * Valid for any combination. Source: docs/method/holding.md
 */
export function generalMargins(
  { problem }: Prepared,
  input: PredictInput,
): (mode: WantedAttitude["mode"]) => number {
  const pull = generalPull(input);
  return (mode) =>
    problem.wants.attitudes
      .filter((attitude) => attitude.mode === mode)
      .reduce(
        (margin, { angle }) => Math.min(margin, wantedMargin(input.vehicle, pull, { attitude: angle, mode })),
        Number.POSITIVE_INFINITY,
      );
}
