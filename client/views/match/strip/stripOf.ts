import type { Spread } from "../../../../shared/decide/uncertainty.ts";
import { SAME_ANGLE, worstName } from "../../../../shared/decide/verdict/attitudeWords.ts";
import { type AttitudeRow, attitudeRows, type Outcome } from "../../../state/outcome.ts";
import type { UncertaintyState } from "../../../state/useUncertainty.ts";

/** An attitude of the row; the tightest one is marked. */
export interface StripAttitude
  extends Pick<AttitudeRow, "title" | "angle" | "parked" | "driving" | "parkedModes" | "drivingModes"> {
  readonly key: string;
  /** the least margin from floor to ceiling, parked */
  readonly worst: boolean;
}

/** "the overhang" as a title: "Overhang". */
function titleOf(angle: number): string {
  const name = worstName(angle).slice("the ".length);
  return name.charAt(0).toUpperCase() + name.slice(1);
}

/** The worst angle parked, with the least margin driving, which lies within a degree or two of it. */
function worstOf({ prediction }: Outcome): StripAttitude[] {
  if (!prediction || prediction.worst.parked.margin === null) return [];
  const { parked, driving } = prediction.worst;
  return [
    {
      key: "worst",
      title: titleOf(parked.angle),
      angle: parked.angle,
      parked: parked.margin,
      driving: driving.margin,
      parkedModes: parked.governs,
      drivingModes: driving.governs,
      worst: true,
    },
  ];
}

/**
 * Attitudes that a build must hold by rising angle, the tightest among them.
 *
 * @param outcome - the solved build
 * @returns angles [°] with their margins [-]; the worst angle stands by itself where it is none of the build's own
 */
export function stripOf(outcome: Outcome): StripAttitude[] {
  const [worst] = worstOf(outcome);
  const isWorst = (angle: number) => worst !== undefined && Math.abs(angle - worst.angle) < SAME_ANGLE;
  const own = attitudeRows(outcome).map((row) => ({
    ...row,
    key: `at ${row.angle}`,
    worst: isWorst(row.angle),
  }));
  const besides = worst && !own.some((each) => each.worst) ? [worst] : [];
  return [...own, ...besides].sort((a, b) => a.angle - b.angle);
}

/** @returns what the samples say of an attitude, parked and driving; null where they don't, or not yet */
export function spreadsOf(
  { angle, worst }: Pick<StripAttitude, "angle" | "worst">,
  sure: Pick<UncertaintyState, "doubt" | "worst">,
): { readonly parked: Spread | null; readonly driving: Spread | null } {
  const own = sure.doubt?.attitudes.find((each) => each.angle === angle);
  const beside = worst ? sure.worst : null;
  return {
    parked: own?.parked ?? beside?.parked.parked ?? null,
    driving: own?.driving ?? beside?.driving.driving ?? null,
  };
}
