import type { PullTest } from "../../model/tests/pull.ts";
import { pullContradiction } from "../../model/tests/rowContradictions.ts";
import { STANDARD_GRAVITY } from "../../physics/constants.ts";
import { toSI } from "../../units/quantity.ts";
import { maybe, type Reading } from "./reading.ts";

export interface PullTrial {
  /** force on the surface that held [N] */
  readonly held: number;
  readonly letGo: number | null;
  /** [V], at the pack's terminals */
  readonly voltage: number | null;
  /** shim in the place of the set gap [m] */
  readonly gap: number | null;
}

/** How the rig's own weight counts: hung from a ceiling it is held as well; lifted off a floor the scale carries it; dragged along it is no part of the load. */
const RIG_SIGN = { ceiling: 1, "straight-off": -1, along: 0 } as const;

/** @returns what the rig itself adds to a load on the surface, below 0 where it takes from it [N] */
export function rigWeight({ direction, rigMass }: PullTest): number {
  return RIG_SIGN[direction] * toSI(rigMass, "mass") * STANDARD_GRAVITY;
}

/**
 * A pull test's brackets: the force on the surface, the rig's own weight accounted for.
 *
 * @param test - as stored
 * @returns held and let go [N], voltage [V], shim [m]; held 0 where it let go at once
 */
export function pullTrials(test: PullTest): Reading<PullTrial>[] {
  const rig = rigWeight(test);
  return test.rows.map((row, index) => {
    const held = toSI(row.held, "load");
    const letGo = row.letGo && toSI(row.letGo, "load");
    const atOnce = held === 0 && letGo !== null;
    return {
      held: atOnce ? 0 : Math.max(0, held + rig),
      letGo: letGo === null ? null : Math.max(0, letGo + rig),
      voltage: maybe(row.voltage, "voltage") ?? null,
      gap: maybe(row.gap, "length") ?? null,
      row: index,
      setAside: row.setAside ?? pullContradiction(row),
    };
  });
}
