import type { Spread } from "../../../shared/decide/uncertainty.ts";
import { marginText, targetText } from "../../../shared/decide/verdict/figures.ts";
import type { Least } from "../../../shared/decide/verdict/findings.ts";
import { isDestroyed } from "../../../shared/decide/verdict/states.ts";
import type { Verdict } from "../../../shared/decide/verdict/verdict.ts";
import { type Figure, figureOf } from "../../../shared/decide/verdict/words.ts";
import type { UncertaintyState } from "../../state/useUncertainty.ts";
import { rangeText, sureText } from "../uncertaintyWords.ts";

/** A figure of the band, with what narrows it. */
export interface BandFigure extends Figure {
  readonly also: string;
}

/** What the samples say of the least margin; null where they don't, or not yet. */
function spreadOf(least: Least, { doubt, worst: beside }: UncertaintyState): Spread | null {
  const over = doubt?.over?.joint.name === least.over?.name ? doubt?.over?.worst : null;
  const worst = least.over ? over : beside;
  return (least.driving ? worst?.driving.driving : worst?.parked.parked) ?? null;
}

function marginFigure(least: Least, target: number, sure: UncertaintyState): BandFigure {
  const spread = spreadOf(least, sure);
  const range = spread && rangeText(spread);
  const wanted = `target ${targetText(target)}`;
  return {
    value: marginText(least.margin),
    of: `the pull needed on ${least.name}`,
    also: range ? `${range}, ${wanted}` : wanted,
  };
}

function chanceFigure({ chance }: Verdict, { asked }: UncertaintyState): BandFigure[] {
  const of = "chance of holding";
  if (chance) return [{ value: sureText(chance.holds), of, also: "" }];
  return asked ? [{ value: "…", of, also: "" }] : [];
}

/**
 * The figures beside a verdict's sentence, the one that decides first.
 *
 * @param verdict - from {@link verdictOf}
 * @param target - margin that is wanted [-]
 * @param sure - what sampling says of it
 * @returns a figure that decides; margin and chance of holding only where the build lasts to make use of them [-]
 */
export function bandFigures(verdict: Verdict, target: number, sure: UncertaintyState): BandFigure[] {
  const { state, reason, least } = verdict;
  const figure = figureOf(verdict);
  const first = figure ? [{ ...figure, also: "" }] : [];
  if (isDestroyed(state) || reason.kind === "standing") return first;
  const margin = least ? [marginFigure(least, target, sure)] : [];
  const chance = chanceFigure(verdict, sure);
  if (reason.kind === "ratings") return [...first, ...margin];
  return reason.kind === "chance" ? [...chance, ...margin] : [...margin, ...chance];
}
