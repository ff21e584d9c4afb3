import { asProblem } from "../../../../shared/numeric/errors.ts";
import type { PartialInput, PartialVehicle } from "../../../../shared/physics/partial/input.ts";
import { partialHolds } from "../../../../shared/physics/partial/partialAnswer.ts";
import { type CycleSegment, type Rundown, runDown, type Sample } from "../../../../shared/physics/rundown.ts";
import type { Outcome } from "../../../state/outcome.ts";
import type { Pulled } from "../../../ui/partial/partialWords.ts";

/** A moment of a run, and what its pull holds as far as that is known. */
export interface RunMoment extends Pulled {
  readonly sample: Sample;
}

/** A run whose margins can't be followed, for the friction isn't known: how long, and its two ends. */
export interface PartialRun {
  readonly end: Rundown["end"];
  readonly start: RunMoment;
  readonly last: RunMoment;
  readonly warnings: Rundown["warnings"];
}

export interface RunAsked {
  /** z₀ [-] */
  readonly startCharge: number;
  readonly targetMargin: number;
  readonly cycle: readonly CycleSegment[];
  /** attitudes [°] */
  readonly angles: readonly number[];
}

/** Stands where the law wants a friction: no attitude is asked, so none of it is read. */
const UNREAD_FRICTION = 0;

/** Under the heaviest load of a drive cycle, where there is one [N]. */
function suctionOf({ suction, loads }: Sample): number {
  return (loads ?? []).reduce((least, load) => Math.min(least, load.suction), suction);
}

function runOf(outcome: Outcome, { blower, vehicle }: PartialInput, asked: RunAsked): Rundown | null {
  const { motor, pack } = outcome.resolved ?? {};
  if (blower.turnedBy !== "motor" || !motor || !pack) return null;
  const { machine } = blower;
  const { openCircuitVoltage: _at, cellResistance: _of, ...wiring } = machine.pack;
  return runDown({
    ...machine,
    vehicle: { ...vehicle, wheelFriction: UNREAD_FRICTION },
    motor: { ...machine.motor, thermalTimeConstant: motor.thermal.thermalTimeConstant },
    pack: { ...wiring, cell: pack.cell },
    startCharge: asked.startCharge,
    cycle: asked.cycle,
    angles: [],
  });
}

function momentOf(sample: Sample, vehicle: PartialVehicle, { angles, targetMargin }: RunAsked): RunMoment {
  const suction = suctionOf(sample);
  const { pressure, rpm } = sample;
  return {
    sample,
    suction,
    pressure,
    rpm,
    holds: partialHolds(vehicle, suction, { angles, target: targetMargin }),
  };
}

/**
 * How long a charge lasts where friction alone isn't known.
 *
 * @param outcome - the build, something missing
 * @param asked - start charge [-], margin wanted [-], drive cycle, attitudes [°]
 * @returns the run with its two ends; why there is none; null where more than friction is missing
 */
export function partialRun(
  outcome: Outcome,
  asked: RunAsked,
): PartialRun | { readonly problem: string } | null {
  const partial = outcome.resolved?.partial;
  if (!partial || partial.unknown.some((each) => each !== "friction")) return null;
  const made = asProblem(() => runOf(outcome, partial.input, asked));
  if ("problem" in made) return made;
  const run = made.answered;
  if (!run) return null;
  const { vehicle } = partial.input;
  const [first, final] = [run.samples[0], run.samples[run.samples.length - 1]];
  return {
    end: run.end,
    start: momentOf(first, vehicle, asked),
    last: momentOf(final, vehicle, asked),
    warnings: run.warnings.filter(({ code }) => !code.startsWith("wheel-friction")),
  };
}
