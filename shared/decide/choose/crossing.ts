import { assemble, type PredictInput, suctionAt } from "../../physics/assembly.ts";
import { pullOf, rideHeightOf } from "../../physics/hold/pull.ts";
import { arrivalPoint, operatingPoints } from "../../physics/operatingPoint.ts";
import { writeFastCase } from "../../physics/point/fastCase.ts";
import { suctionByGap } from "../../physics/pullByGap.ts";
import { wantedMargin } from "../wanted.ts";
import { FLAG } from "./columns.ts";
import type { PlacedSkirt } from "./fittedSkirt.ts";
import { marginOf } from "./holdNeeds.ts";
import { inputOf } from "./input.ts";
import { placesOf } from "./places.ts";
import type { Prepared } from "./prepare.ts";
import { fastSuction } from "./pullOf.ts";
import { isProven, solveFrom } from "./solveSet.ts";
import { sumAt } from "./sums.ts";
import type { Work } from "./work.ts";

/** The set that is asked about: its digits and flags. */
interface Crossing {
  readonly motor: number;
  readonly sizedRotor: number;
  readonly pack: number;
  readonly fittedSkirt: number;
  readonly flags: number;
}

/** F_s over a joint from the set's own solution; NaN where one crossing is not proven or the leak is no fast case [N]. */
function fastOver(prepared: Prepared, work: Work, place: PlacedSkirt): number {
  const { c, aside, solution } = work;
  const fitted = prepared.fittedSkirts[work.fittedSkirt];
  const sizedRotor = prepared.sizedRotors[work.sizedRotor];
  if (!place.fast || !fitted.fast || place.lip !== fitted.lip || fitted.sealed) return Number.NaN;
  writeFastCase(c, place.fast);
  aside.set(solution);
  const solved = solveFrom(c, aside, place.lip) && isProven(sizedRotor, c, aside);
  const suction = solved ? fastSuction(prepared, fitted, place, c, aside) : Number.NaN;
  writeFastCase(c, fitted.fast);
  return suction;
}

/** Least wanted margin of a build by the general solver. */
function scannedMargin({ problem }: Prepared, input: PredictInput): number {
  const assembly = assemble(input);
  const arrival = arrivalPoint(operatingPoints(assembly.machine, assembly.leak));
  if (!arrival) return 0;
  const suction = Math.max(0, suctionAt(input, assembly, arrival.pressure, arrival.flow));
  const rideHeight = rideHeightOf(input.vehicle, input.skirt.gap);
  const pull = pullOf(suction, rideHeight, suctionByGap(input, assembly, arrival));
  const margins = problem.wants.attitudes.map(({ angle, mode }) =>
    wantedMargin(input.vehicle, pull, { attitude: angle, mode }),
  );
  return Math.min(...margins);
}

function marginOver(
  prepared: Prepared,
  work: Work,
  index: number,
  row: Crossing,
  place: PlacedSkirt,
): number {
  const scan = prepared.gives || (row.flags & FLAG.scanned) !== 0;
  const suction = scan ? Number.NaN : fastOver(prepared, work, place);
  if (Number.isNaN(suction)) {
    const input = inputOf(prepared.problem, placesOf(prepared.radix, index));
    return scannedMargin(prepared, { ...input, skirt: place.skirt });
  }
  const mass = sumAt(prepared.sums.mass, row);
  const { parked, driving } = prepared.fittedSkirts[row.fittedSkirt];
  const pulling = Math.max(0, suction);
  return Math.min(marginOf(parked, mass, pulling), marginOf(driving, mass, pulling));
}

/**
 * Least margin of a solved set over the joints of its surface, on the wanted attitudes.
 *
 *     the least over joints and ways, each solved from the set's own operating point
 *
 * @param prepared - the question
 * @param work - this thread's memory, the set's solution in it
 * @param index - of the set [-]
 * @param row - its digits and flags
 * @returns margin [-]; infinite where no suction is needed or there is no joint, 0 where the rotor stands, NaN where crossing joints is no wish
 *
 * Valid for any set; an answer that a prediction would refuse counts as 0. Source: docs/method/choosing.md
 */
export function crossingMargin(prepared: Prepared, work: Work, index: number, row: Crossing): number {
  const { over } = prepared.fittedSkirts[row.fittedSkirt];
  if ((prepared.problem.wants.leastCrossing ?? null) === null) return Number.NaN;
  if (over.length === 0) return Number.POSITIVE_INFINITY;
  if (row.flags & (FLAG.noPoint | FLAG.unsolved)) return 0;
  let least = Number.POSITIVE_INFINITY;
  for (const place of over) {
    try {
      least = Math.min(least, marginOver(prepared, work, index, row, place));
    } catch (error) {
      if (error instanceof Error && "code" in error) return 0;
      throw error;
    }
  }
  return least;
}
