import type { StatedUncertainty } from "../../../shared/decide/uncertainty.ts";
import { type Concluded, concluded } from "../../../shared/decide/verdict/concluded.ts";
import type { Findings } from "../../../shared/decide/verdict/findings.ts";
import type { Case } from "../../../shared/decide/verdict/judge.ts";
import { type Answer, asProblem } from "../../../shared/numeric/errors.ts";

/** A build's verdict to be finished, plain data. */
export interface VerdictQuestion {
  readonly of: Case;
  readonly findings: Findings;
  /** what is uncertain in it; null: nothing is */
  readonly asked: StatedUncertainty | null;
}

export type VerdictReply = Answer<Concluded>;

/** @returns the verdict with its ways out, or in words why there are none */
export function replyTo({ of, findings, asked }: VerdictQuestion): VerdictReply {
  return asProblem(() => concluded(of, findings, asked));
}
