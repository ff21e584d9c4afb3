import { answerOrNull, requirePositive } from "../../numeric/errors.ts";
import type { AnyPredictInput } from "../../physics/predictAny.ts";
import { type Pulled, pullBy, pullOfVariants, type Wanted, wantedMargin } from "../wanted.ts";
import { type Effects, effectsOf, runTimeOf, type State } from "./effects.ts";
import { electricalHandles } from "./electrical.ts";
import type { Handle, Setting } from "./handle.ts";
import { type Reach, reach } from "./reach.ts";
import { rotorHandles } from "./rotor.ts";
import { skirtHandles } from "./skirt.ts";
import { vehicleHandles } from "./vehicle.ts";

/** What one handle alone can do for the wanted margin. */
export interface Way extends Reach {
  readonly handle: Handle["key"];
  readonly now: number;
  /** what was searched, both inclusive */
  readonly limits: readonly [number, number];
  /** beside the margin, at the value against now; null unless the value is a change that does it */
  readonly effects: Effects | null;
}

export interface Ways {
  /** as it stands; null where no pull is needed */
  readonly margin: number | null;
  readonly ways: readonly Way[];
}

export interface Asked extends Wanted {
  readonly targetMargin: number;
}

/** A value of a handle may be a build that can't be answered for: then it is no way to hold. */
function answered(solve: () => number): number {
  return answerOrNull(solve) ?? Number.NaN;
}

function stateOf(build: AnyPredictInput, setting: Setting, pull: (build: AnyPredictInput) => Pulled): State {
  let time: number | null | undefined;
  const runTime = () => {
    if (time === undefined) time = runTimeOf(build, setting.cell);
    return time;
  };
  return { build, point: pull(build).point, runTime };
}

/**
 * For every handle alone: the value, nearest to the present one, that brings the wanted attitude to the target margin, and what it costs.
 *
 *     m(x) = m_target for each handle x, all else as it stands
 *
 * @param setting - the build [SI], its cell, rotor and skirt at other sizes where known
 * @param asked - attitude [°], parked or driving, m_target [-]
 * @returns margin as it stands [-], and for each handle whether, at which value and at what cost [SI]
 * @throws {OutOfRangeError} with the path of a number that can't be, on a target that is not above 0
 * @throws {NotEnoughDataError} where the build as it stands has no answer
 *
 * Valid within each handle's limits and as the prediction. Source: docs/method/ways.md
 */
export function waysToHold(setting: Setting, asked: Asked): Ways {
  const target = requirePositive("targetMargin", asked.targetMargin);
  const pull = pullOfVariants(setting.build);
  const marginOf = (build: AnyPredictInput) => wantedMargin(build.vehicle, pullBy(build, pull(build)), asked);
  const margin = marginOf(setting.build);
  const now = stateOf(setting.build, setting, pull);
  const handles = [rotorHandles, electricalHandles, skirtHandles, vehicleHandles].flatMap((of) =>
    of(setting),
  );
  return {
    margin: Number.isFinite(margin) ? margin : null,
    ways: handles.map((handle): Way => {
      const reached = reach((value) => answered(() => marginOf(handle.put(value))), handle, target);
      const changes = reached.state === "does" && reached.value !== null;
      const effects = changes ? effectsAt(handle.put(reached.value), now, setting, pull) : null;
      return { handle: handle.key, now: handle.now, limits: handle.limits, ...reached, effects };
    }),
  };
}

/** A vehicle's own handles leave motor and rotor as they are. */
function effectsAt(
  build: AnyPredictInput,
  now: State,
  setting: Setting,
  pull: (build: AnyPredictInput) => Pulled,
): Effects {
  const after = stateOf(build, setting, pull);
  return effectsOf(now, after.point === now.point ? { ...after, runTime: now.runTime } : after);
}
