import { writeFastCase } from "../../physics/point/fastCase.ts";
import { FLAG } from "./columns.ts";
import type { PlacedSkirt } from "./fittedSkirt.ts";
import { isMovable, type MovingGap } from "./gapLaw.ts";
import { generalMargins } from "./generalMargin.ts";
import { givingMargins, type Margins } from "./givingMargin.ts";
import { marginOf } from "./holdNeeds.ts";
import { ductedInput } from "./input.ts";
import { isOpen, placesOf } from "./places.ts";
import type { Prepared } from "./prepare.ts";
import { fastSuction } from "./pullOf.ts";
import { isProven, solveFrom } from "./solveCombination.ts";
import { sumAt } from "./sums.ts";
import type { Work } from "./work.ts";

/** The combination that is asked about: its digits and flags. */
interface Crossing {
  readonly motor: number;
  readonly sizedRotor: number;
  readonly pack: number;
  readonly fittedSkirt: number;
  readonly flags: number;
  /** margins on the surface */
  readonly parked: number;
  readonly driving: number;
}

/** Least margin over a joint from the combination's own solution; NaN where the fast solvers don't take it. */
function fastOver(prepared: Prepared, work: Work, row: Crossing, place: PlacedSkirt): number {
  const { c, aside, solution } = work;
  const fitted = prepared.fittedSkirts[work.fittedSkirt];
  const sizedRotor = prepared.sizedRotors[work.sizedRotor];
  const { fast } = place;
  if (!fast || !fitted.fast || place.lip !== fitted.lip || fitted.sealed) return Number.NaN;
  writeFastCase(c, fast);
  aside.set(solution);
  const solved = solveFrom(c, aside, place.lip) && isProven(sizedRotor, c, aside);
  const suction = solved ? Math.max(0, fastSuction(prepared, fitted, place, c, aside)) : Number.NaN;
  const margin = suction >= 0 ? marginOfPull(prepared, work, row, { place, fast }, suction) : Number.NaN;
  writeFastCase(c, fitted.fast);
  return margin;
}

const margins: Margins = { parked: 0, driving: 0 };

/** Of a pull over a joint, its solution aside. */
function marginOfPull(
  prepared: Prepared,
  work: Work,
  row: Crossing,
  { place, fast }: Pick<MovingGap, "place" | "fast">,
  suction: number,
): number {
  const fitted = prepared.fittedSkirts[row.fittedSkirt];
  const mass = sumAt(prepared.sums.mass, row);
  if (!prepared.gives || suction === 0)
    return Math.min(marginOf(fitted.parked, mass, suction), marginOf(fitted.driving, mass, suction));
  if (!isMovable(place) || !givingMargins({ prepared, work, fitted, place, fast }, mass, margins))
    return Number.NaN;
  return Math.min(margins.parked, margins.driving);
}

function marginOver(
  prepared: Prepared,
  work: Work,
  index: number,
  row: Crossing,
  place: PlacedSkirt,
): number {
  const margin = row.flags & FLAG.scanned ? Number.NaN : fastOver(prepared, work, row, place);
  if (!Number.isNaN(margin)) return margin;
  const input = ductedInput(prepared.problem, placesOf(prepared.radix, index));
  const least = generalMargins(prepared, { ...input, skirt: place.skirt });
  return Math.min(least("parked"), least("driving"));
}

/**
 * Least margin of a solved combination over the joints of its surface, on the wanted attitudes.
 *
 *     the least over joints and ways, each solved from the combination's own operating point;  an open propeller: as on the surface
 *
 * @param prepared - the question
 * @param work - this thread's memory, the combination's solution in it
 * @param index - of the combination [-]
 * @param row - its digits and flags
 * @returns margin [-]; infinite where no suction is needed or there is no joint, 0 where the rotor stands, NaN where crossing joints is no wish
 *
 * Valid for any combination; an answer that a prediction would refuse counts as 0. Source: docs/method/choosing.md
 */
export function crossingMargin(prepared: Prepared, work: Work, index: number, row: Crossing): number {
  const { problem, radix } = prepared;
  if ((problem.wants.leastCrossing ?? null) === null) return Number.NaN;
  if (isOpen(radix, row.sizedRotor)) {
    const stand = problem.stands?.[row.fittedSkirt - radix.ducted.skirts];
    return stand?.crosses ? Math.min(row.parked, row.driving) : Number.POSITIVE_INFINITY;
  }
  const { over } = prepared.fittedSkirts[row.fittedSkirt];
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
