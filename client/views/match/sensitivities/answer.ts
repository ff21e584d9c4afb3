import { type Sensitivities, sensitivitiesOf } from "../../../../shared/decide/sensitivities.ts";
import type { Wanted } from "../../../../shared/decide/wanted.ts";
import { NotEnoughDataError, OutOfRangeError } from "../../../../shared/numeric/errors.ts";
import type { AnyPredictInput } from "../../../../shared/physics/predictAny.ts";

/** What is asked of the other thread, all of it plain data. */
export interface Question {
  readonly build: AnyPredictInput;
  readonly wanted: Wanted;
}

export type Reply = { readonly answered: Sensitivities } | { readonly problem: string };

/** @returns the sensitivities, or in words why there are none */
export function replyTo({ build, wanted }: Question): Reply {
  try {
    return { answered: sensitivitiesOf(build, wanted) };
  } catch (error) {
    if (!(error instanceof OutOfRangeError || error instanceof NotEnoughDataError)) throw error;
    return { problem: `${error.message}.`.replace(/\.\.$/, ".") };
  }
}
