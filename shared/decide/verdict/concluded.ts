import { sampledWithJoints } from "../joints/sampled.ts";
import type { StatedUncertainty } from "../uncertainty.ts";
import type { Findings } from "./findings.ts";
import { burnsAfter, type Case, chanceOf } from "./judge.ts";
import { type Verdict, verdictOf } from "./verdict.ts";
import { surelyHeldMass, type WayOut, waysOut } from "./wayOut.ts";

/** A verdict with what takes longer than a drag may. */
export interface Concluded {
  /** with the seconds until it burns, where it does */
  readonly verdict: Verdict;
  readonly ways: readonly WayOut[];
}

function waysOf(of: Case, verdict: Verdict, asked: StatedUncertainty | null): WayOut[] {
  const { reason } = verdict;
  if (reason.kind !== "chance") return waysOut(of, verdict);
  const sample = (at: Case) => asked && chanceOf(sampledWithJoints(at, asked), of.attitudes);
  return [surelyHeldMass(of, reason.chance, sample) ?? []].flat();
}

/**
 * A verdict with the seconds until the winding burns, where it does.
 *
 *     as {@link verdictOf}, {@link burnsAfter}
 *
 * @param of - the build as a case [SI]
 * @param findings - of that case, with the chance where it is known
 * @returns the verdict [s]
 * @throws {OutOfRangeError} {NotEnoughDataError} as what it is made from
 *
 * Valid and source: as {@link verdictOf}
 */
export function timedVerdict(of: Case, findings: Findings): Verdict {
  const first = verdictOf(findings);
  return first.reason.kind === "winding" ? verdictOf({ ...findings, burnsAfter: burnsAfter(of) }) : first;
}

/**
 * A verdict with all that it says: the seconds until it burns, and the ways out.
 *
 *     as {@link timedVerdict}, {@link waysOut}, {@link surelyHeldMass}
 *
 * @param of - the build as a case [SI]
 * @param findings - of that case, with the chance where it is known
 * @param asked - what is uncertain in it, for the mass that is surely held [unit of each number]; null: nothing is
 * @returns the verdict [s] and its ways out [-, kg, m; rad/s]
 * @throws {OutOfRangeError} {NotEnoughDataError} as what it is made from
 *
 * Valid and source: as {@link verdictOf}
 */
export function concluded(of: Case, findings: Findings, asked: StatedUncertainty | null): Concluded {
  const verdict = timedVerdict(of, findings);
  return { verdict, ways: waysOf(of, verdict, asked) };
}
