import { solvable } from "../../../shared/book/resolve.ts";
import {
  type SampledFigure,
  sampledBoard,
  sampledMargin,
} from "../../../shared/book/uncertainty/workings.ts";
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

/** Over the hardest joint, named after it. */
function overOf({ doubt }: UncertaintyState): SampledFigure[] {
  if (!doubt?.over) return [];
  const { joint, attitudes, worst } = doubt.over;
  const all = marginsOf([...attitudes, worst.parked, worst.driving]);
  return all.map((each) => ({ ...each, what: `${each.what}, over ${joint.name}` }));
}

/** @returns the workings of all that is sampled of a solved build; none before it is */
export function sampledOf(outcome: Outcome | null, state: UncertaintyState): Board {
  const { doubt, asked, sources } = state;
  const input = outcome?.resolved && solvable(outcome.resolved);
  if (!outcome?.resolved || !input || !doubt || !asked) return NO_BOARD;
  const of = { input, resolved: outcome.resolved, asked, sources, shares: doubt.shares };
  return sampledBoard(of, [...marginsOf(doubt.attitudes), ...forcesOf(doubt), ...overOf(state)]);
}

/** @returns the workings of all that is sampled of the build on the screen; none before it is */
export function sampledNow(): Board {
  return sampledOf(shownOutcome.value, uncertaintyNow.value);
}
