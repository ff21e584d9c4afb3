import type { Verdict } from "../../../shared/decide/verdict/verdict.ts";
import { figureOf, stateWords } from "../../../shared/decide/verdict/words.ts";

/** @returns what a build comes to in a few words: "tight, 1.31 × the pull needed on the overhang" */
export function effectWords(verdict: Verdict): string {
  const figure = figureOf(verdict);
  return [stateWords(verdict), ...(figure ? [`${figure.value} ${figure.of}`] : [])].join(", ");
}
