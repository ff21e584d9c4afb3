import { listedAttitudes, SAME_ANGLE, worstName } from "../../../shared/decide/verdict/attitudeWords.ts";
import type { AttitudeMargins } from "../../state/outcome.ts";

const CONTRADICTED = "But tests behind it contradict each other or the model.";

export interface Finding {
  /** false: the rotor stands still or finds no lasting point */
  readonly turns: boolean;
  /** every attitude the build must hold, the floor left out */
  readonly attitudes: readonly AttitudeMargins[];
  readonly worst: {
    readonly parked: { readonly angle: number; readonly margin: number | null };
    readonly driving: { readonly angle: number; readonly margin: number | null };
  };
  /** margin that is wanted */
  readonly target: number;
  /** true: pull or leak tests in use contradict each other or the model */
  readonly contradicted?: boolean;
}

function worstAt(angle: number): string {
  const name = worstName(angle);
  const own = name === "the overhang" || name === "the slope";
  return own ? `the worst ${name.slice("the ".length)} at ${angle.toFixed(0)}°` : name;
}

function falls(margin: number | null): boolean {
  return margin !== null && margin < 1;
}

/** Attitudes of the user's own are left out of the worst's name where one of them is the worst. */
function fallen(finding: Finding): string[] {
  const names = finding.attitudes.filter((each) => falls(each.parked)).map((each) => each.name);
  const { parked } = finding.worst;
  const named = finding.attitudes.some((each) => Math.abs(each.angle - parked.angle) < SAME_ANGLE);
  return falls(parked.margin) && !named ? [...names, worstAt(parked.angle)] : names;
}

function holding({ worst, target }: Finding): string {
  const { angle, margin } = worst.parked;
  if (margin === null) return "Holds everywhere it must go without any pull.";
  const where = worstName(angle);
  if (margin < target)
    return `Holds everywhere it must go, but with less to spare on ${where} than the ${target.toFixed(1)} × you want.`;
  return `Holds everywhere it must go, with least to spare on ${where}.`;
}

function climbing(finding: Finding): string {
  const stuck = finding.attitudes
    .filter((each) => !falls(each.parked) && falls(each.driving))
    .map((each) => each.name);
  if (stuck.length > 0) return ` It cannot drive up ${listedAttitudes(stuck, "or")}.`;
  const { parked, driving } = finding.worst;
  return !falls(parked.margin) && falls(driving.margin)
    ? ` It cannot drive up ${worstAt(driving.angle)}.`
    : "";
}

/**
 * The answer to "does it hold?", made from the result and from nothing else.
 *
 * @param finding - margins by attitude, the worst, the target
 * @returns one sentence, a second where it holds but cannot climb, and one where tests speak against it
 */
export function answerSentence(finding: Finding): string {
  const verdict = verdictOf(finding);
  return finding.contradicted ? `${verdict} ${CONTRADICTED}` : verdict;
}

function verdictOf(finding: Finding): string {
  if (!finding.turns) return "Falls: the rotor comes to no steady speed, so nothing is held.";
  const lost = fallen(finding);
  if (lost.length === 0) return holding(finding) + climbing(finding);
  const kept = finding.attitudes.filter((each) => !falls(each.parked)).map((each) => each.name);
  if (kept.length === 0) {
    const all = finding.attitudes.map((each) => each.name);
    return `Falls: the pull is too small for ${listedAttitudes(all)}.`;
  }
  return `Holds ${listedAttitudes(kept)} but not ${listedAttitudes(lost, "or")}.${climbing(finding)}`;
}
