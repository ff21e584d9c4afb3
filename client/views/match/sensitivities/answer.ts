import { type Sensitivities, sensitivitiesOf } from "../../../../shared/decide/sensitivities.ts";
import type { Wanted } from "../../../../shared/decide/wanted.ts";
import { type Answer, asProblem } from "../../../../shared/numeric/errors.ts";
import type { AnyPredictInput } from "../../../../shared/physics/predictAny.ts";

/** What is asked of the other thread, all of it plain data. */
export interface Question {
  readonly build: AnyPredictInput;
  readonly wanted: Wanted;
}

export type Reply = Answer<Sensitivities>;

/** @returns the sensitivities, or in words why there are none */
export function replyTo({ build, wanted }: Question): Reply {
  return asProblem(() => sensitivitiesOf(build, wanted));
}
