import type { Prediction } from "./predict.ts";
import { type AnyPredictInput, type AnyPrediction, isPropeller } from "./predictAny.ts";
import type { PropellerPrediction } from "./propeller.ts";
import { propellerWorkings } from "./propellerWorkings.ts";
import type { Working } from "./working.ts";
import { workingsOf } from "./workings.ts";

/**
 * Working of a prediction of either kind.
 *
 *     ducted: {@link workingsOf};  propeller: {@link propellerWorkings}
 *
 * @param input - what was predicted, SI
 * @param prediction - its answer
 * @param angles - attitudes whose margins are worked out [°]
 * @returns workings in the order in which the figures follow from each other; none where nothing turns
 * @throws {OutOfRangeError} as the one that answers
 *
 * Valid and source: as the one that answers
 */
export function workingsOfAny(
  input: AnyPredictInput,
  prediction: AnyPrediction,
  angles: readonly number[],
): Working[] {
  return isPropeller(input)
    ? propellerWorkings(input, prediction as PropellerPrediction, angles)
    : workingsOf(input, prediction as Prediction, angles);
}
