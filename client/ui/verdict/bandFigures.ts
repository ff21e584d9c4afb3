import type { AttitudeUncertainty } from "../../../shared/decide/uncertainty.ts";
import { marginText, targetText } from "../../../shared/decide/verdict/figures.ts";
import type { Chance, Least } from "../../../shared/decide/verdict/findings.ts";
import { isDestroyed } from "../../../shared/decide/verdict/states.ts";
import type { Verdict } from "../../../shared/decide/verdict/verdict.ts";
import { type Figure, figureOf } from "../../../shared/decide/verdict/words.ts";
import type { UncertaintyState } from "../../state/useUncertainty.ts";
import { rangeText, sureText } from "../uncertaintyWords.ts";
import type { SampledMarginProps } from "../working/SampledFigure.tsx";

/** A figure of the band, with what narrows it. */
export interface BandFigure extends Figure {
  readonly also: string;
  /** where its working is found; of a figure of the limits it stands with them */
  readonly margin?: Least;
  readonly sampled?: SampledMarginProps;
}

/** What the samples say of the least margin; null where they don't, or not yet. */
function sampledOf(least: Least, { doubt, worst: beside }: UncertaintyState): SampledMarginProps | null {
  const over = doubt?.over?.joint.name === least.over?.name ? doubt?.over?.worst : null;
  const state = least.driving ? "driving" : "parked";
  const at = (least.over ? over : beside)?.[state];
  return at ? { angle: at.angle, state, spread: at[state], over: least.over?.name } : null;
}

/** @returns the attitude whose chance it is; null where it is sampled anew */
export function sampledAs(
  { angle, holds, margin5 }: Chance,
  { doubt }: UncertaintyState,
): SampledMarginProps | null {
  const over = doubt?.over ?? null;
  const all: [AttitudeUncertainty, string | undefined][] = [
    ...(doubt?.attitudes ?? []).map((each): [AttitudeUncertainty, undefined] => [each, undefined]),
    ...(over ? [...over.attitudes, over.worst.parked, over.worst.driving] : []).map(
      (each): [AttitudeUncertainty, string | undefined] => [each, over?.joint.name],
    ),
  ];
  for (const [at, joint] of all)
    for (const state of ["parked", "driving"] as const) {
      const spread = at[state];
      if (at.angle === angle && spread.holds === holds && spread.p5 === margin5)
        return { angle, state, spread, over: joint };
    }
  return null;
}

function marginFigure(least: Least, target: number, sure: UncertaintyState): BandFigure {
  const sampled = sampledOf(least, sure);
  const wanted = `target ${targetText(target)}`;
  const known = sampled && rangeText(sampled.spread) ? { sampled } : {};
  return {
    value: marginText(least.margin),
    of: `the pull needed on ${least.name}`,
    also: wanted,
    margin: least,
    ...known,
  };
}

function chanceFigure({ chance }: Verdict, sure: UncertaintyState): BandFigure[] {
  const of = "chance of holding";
  if (!chance) return sure.asked ? [{ value: "…", of, also: "" }] : [];
  const sampled = sampledAs(chance, sure);
  return [{ value: sureText(chance.holds), of, also: "", ...(sampled ? { sampled } : {}) }];
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
