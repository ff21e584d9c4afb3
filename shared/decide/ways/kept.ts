import { answerOrNull } from "../../numeric/errors.ts";
import { chargeAt } from "../../physics/cells/cell.ts";
import type { AnyPredictInput } from "../../physics/predictAny.ts";
import type { Keep } from "../../physics/rundown/input.ts";
import { type CellInput, runDown } from "../../physics/rundown.ts";
import type { WantedHold } from "../size/input.ts";
import { keepForMargin } from "../size/keep.ts";
import type { Wanted } from "../wanted.ts";
import { runTimeOf } from "./effects.ts";

/** What a controller that keeps the wanted margins would save. */
export interface KeptReach {
  /** [Pa], of a propeller [N] */
  readonly keep: Keep;
  /** δ [-] */
  readonly dutyAtStart: number;
  /** to the end of the charge, the throttle as the build has it [s] */
  readonly now: number;
  /** likewise, kept [s] */
  readonly kept: number;
  /** until even full throttle is too little to keep it; all the time where it never is [s] */
  readonly keeps: number;
}

const amountOf = (keep: Keep): number => ("thrust" in keep ? keep.thrust : keep.pressure);

/** The most that any of the attitudes asks for; one that the vehicle keeps by its weight alone asks for nothing. */
function hardestKeep(build: AnyPredictInput, holds: readonly WantedHold[]): Keep | null {
  const keeps = holds.flatMap((hold) => answerOrNull(() => keepForMargin(build, hold)) ?? []);
  return keeps.sort((a, b) => amountOf(b) - amountOf(a))[0] ?? null;
}

/**
 * How long a charge lasts when a controller keeps the wanted margins instead of the build's own throttle.
 *
 *     Δp or T of the hardest attitude by {@link keepForMargin}, then {@link runDown} that keeps it
 *
 * @param build - of either kind, at its cells' voltage, SI
 * @param cell - of its pack [C, V, Ω]; null: not known
 * @param holds - attitudes [°] with their margins [-]
 * @returns what is kept [Pa, N], the throttle at the start [-], times to the end of the charge [s]; null where that takes the build's own throttle or more, where nothing is needed, or where there is no run
 *
 * Valid as the two. Source: docs/method/run-down.md
 */
export function keptReach(
  build: AnyPredictInput,
  cell: CellInput | null,
  holds: readonly WantedHold[],
): KeptReach | null {
  const startCharge = cell && chargeAt(cell, build.pack.openCircuitVoltage);
  const keep = hardestKeep(build, holds);
  if (!cell || !startCharge || !keep) return null;
  const now = runTimeOf(build, cell);
  const { series, parallel, wireResistance } = build.pack;
  const pack = { series, parallel, wireResistance, cell };
  const run = answerOrNull(() => runDown({ ...build, pack, startCharge, angles: [], keep }));
  if (!run?.keep || now === null || !(run.keep.dutyAtStart < build.supply.duty)) return null;
  const { dutyAtStart, fullThrottleFrom } = run.keep;
  return { keep, dutyAtStart, now, kept: run.end.time, keeps: fullThrottleFrom ?? run.end.time };
}

/** @returns the same beside the ways to hold: for the wanted margin, where a build has more than that */
export function keptBeside(
  { build, cell }: { readonly build: AnyPredictInput; readonly cell: CellInput | null },
  { attitude: angle, mode, targetMargin: margin }: Wanted & { readonly targetMargin: number },
  now: number | null,
): KeptReach | null {
  return now !== null && now > margin ? keptReach(build, cell, [{ angle, mode, margin }]) : null;
}
