import { solvable } from "../../../shared/book/resolve.ts";
import {
  type SampledFigure,
  type Sampling,
  sampledBoard,
  sampledMargin,
} from "../../../shared/book/uncertainty/workings.ts";
import { overHardest } from "../../../shared/decide/joints/sampled.ts";
import type { AttitudeUncertainty, Uncertainty } from "../../../shared/decide/uncertainty.ts";
import type { Board } from "../../../shared/physics/working.ts";
import { shownOutcome } from "../../state/onScreen.ts";
import type { Outcome } from "../../state/outcome.ts";
import { type UncertaintyState, uncertaintyNow } from "../../state/useUncertainty.ts";
import { NO_BOARD } from "./board.ts";

const marginsOf = (attitudes: readonly AttitudeUncertainty[]): SampledFigure[] =>
  attitudes.flatMap(({ angle, parked, driving }) => [
    sampledMargin(angle, "parked", parked),
    sampledMargin(angle, "driving", driving),
  ]);

function forcesOf({ suction, point }: Uncertainty): SampledFigure[] {
  const pull: SampledFigure = { what: "the pull", symbol: "F", unit: "N", at: suction };
  if (!point) return [pull];
  return [
    pull,
    { what: "the flow", symbol: "Q", unit: "m³/s", at: point.flow },
    { what: "the suction", symbol: "Δp", unit: "Pa", at: point.pressure },
  ];
}

/** Over the hardest joint, named after it: of its own samples, with what is uncertain there. */
function overBoard(of: Sampling, { doubt, joints }: UncertaintyState): Board {
  const over = doubt?.over && overHardest({ build: of.input, joints }, of.asked);
  if (!doubt?.over || !over) return NO_BOARD;
  const { joint, attitudes, worst, shares } = doubt.over;
  const all = marginsOf([...attitudes, worst.parked, worst.driving]);
  const figures = all.map((each) => ({ ...each, what: `${each.what}, over ${joint.name}` }));
  return sampledBoard({ ...of, input: over.hardest.build, asked: over.asked, shares }, figures);
}

/** @returns the workings of all that is sampled of a solved build; none before it is */
export function sampledOf(outcome: Outcome | null, state: UncertaintyState): Board {
  const { doubt, asked, sources } = state;
  const input = outcome?.resolved && solvable(outcome.resolved);
  if (!outcome?.resolved || !input || !doubt || !asked) return NO_BOARD;
  const of = { input, resolved: outcome.resolved, asked, sources, shares: doubt.shares };
  const beside = sampledBoard(of, [...marginsOf(doubt.attitudes), ...forcesOf(doubt)]);
  const over = overBoard(of, state);
  return {
    workings: [...beside.workings, ...over.workings],
    origins: [...beside.origins, ...over.origins],
  };
}

/** @returns the workings of all that is sampled of the build on the screen; none before it is */
export function sampledNow(): Board {
  return sampledOf(shownOutcome.value, uncertaintyNow.value);
}
