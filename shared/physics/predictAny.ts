import type { CellState } from "./cells/cell.ts";
import { type Pull, rigidPull } from "./hold/pull.ts";
import { type PredictInput, type Prediction, predict, STANDARD_ANGLES } from "./predict.ts";
import { type PropellerPredictInput, type PropellerPrediction, predictPropeller } from "./propeller.ts";
import { pullAfter } from "./pullByGap.ts";

/** A build of either kind: pressed on by a cavity's suction, or by a propeller's thrust. */
export type AnyPredictInput = PredictInput | PropellerPredictInput;
export type AnyPrediction = Prediction | PropellerPrediction;

/** @returns whether the build is pressed on by an open propeller */
export function isPropeller(input: AnyPredictInput): input is PropellerPredictInput {
  return "thrust" in input.rotor;
}

/**
 * What a build of either kind does at one state.
 *
 *     ducted: {@link predict};  propeller: {@link predictPropeller}
 *
 * @param input - build, all SI [-]
 * @param angles - attitudes to answer for, floor, wall and ceiling unless given [°]
 * @returns as the one that answers [SI]
 * @throws {OutOfRangeError} with the path of a number that can't be
 *
 * Valid and source: as the one that answers
 */
export function predictAny(
  input: AnyPredictInput,
  angles: readonly number[] = STANDARD_ANGLES,
): AnyPrediction {
  return isPropeller(input) ? predictPropeller(input, angles) : predict(input, angles);
}

/** @returns the pull that a prediction of a build of either kind holds with, giving where its running gear gives [N] */
export function pullOfAny(input: AnyPredictInput, prediction: AnyPrediction): Pull {
  if (isPropeller(input)) return rigidPull(prediction.suction);
  const { point, suction } = prediction as Prediction;
  return pullAfter(input, { point, suction });
}

/** @returns the same build with its cells at another state */
export function atCell<T extends AnyPredictInput>(input: T, { voltage, resistance }: CellState): T {
  return { ...input, pack: { ...input.pack, openCircuitVoltage: voltage, cellResistance: resistance } };
}
