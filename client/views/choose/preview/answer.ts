import { tallyOf } from "../../../../shared/decide/choose/nearest.ts";
import { prepare } from "../../../../shared/decide/choose/prepare.ts";
import type { Problem } from "../../../../shared/decide/choose/problem.ts";
import { LIMITS, type Limit } from "../../../../shared/decide/choose/result.ts";
import { solveChunk } from "../../../../shared/decide/choose/solveChunk.ts";
import { type Answer, asProblem } from "../../../../shared/numeric/errors.ts";

/** What a question would bring, tried in the browser. */
export interface Preview {
  readonly tried: number;
  readonly admissible: number;
  /** the limit that keeps out most combinations; null where none does */
  readonly keepsOut: { readonly limit: Limit; readonly broken: number } | null;
}

export type PreviewReply = Answer<Preview>;

/** @returns the whole question solved, by the same engine as on the server @throws what the engine throws */
export function previewOf(problem: Problem): Preview {
  const prepared = prepare(problem);
  const { meeting, broken } = tallyOf([solveChunk(prepared, 0, prepared.count)]);
  const most = broken.indexOf(Math.max(...broken));
  const keepsOut = broken[most] > 0 ? { limit: LIMITS[most], broken: broken[most] } : null;
  return { tried: prepared.count, admissible: meeting, keepsOut };
}

/** @returns the preview, or in words why there is none */
export function replyTo(problem: Problem): PreviewReply {
  return asProblem(() => previewOf(problem));
}
