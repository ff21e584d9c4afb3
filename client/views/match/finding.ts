import { calibrationNotes } from "../../../shared/book/verdictCase.ts";
import { attitudeRows, type Outcome } from "../../state/outcome.ts";
import type { Finding } from "./sentence.ts";

/** @returns what the sentence is made from; null without a prediction */
export function findingOf(outcome: Outcome): Finding | null {
  const { prediction, build } = outcome;
  if (!prediction) return null;
  const { parked, driving } = prediction.worst;
  return {
    turns: prediction.point !== null,
    attitudes: attitudeRows(outcome),
    worst: { parked, driving },
    target: build.targetMargin,
    contradicted: outcome.resolved !== null && calibrationNotes(outcome.resolved, "conflict").length > 0,
  };
}
