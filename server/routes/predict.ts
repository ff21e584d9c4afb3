import { uncertaintyOf } from "../../shared/decide/uncertainty.ts";
import { type PredictRequest, predictRequest, predictResponse } from "../../shared/model/api/predict.ts";
import { OutOfRangeError } from "../../shared/numeric/errors.ts";
import { predict } from "../../shared/physics/predict.ts";
import type { AnyPredictInput } from "../../shared/physics/predictAny.ts";
import { predictPropeller } from "../../shared/physics/propeller.ts";
import { computation } from "./compute.ts";

function doubted(build: AnyPredictInput, { uncertainty, correlated, samples, seed }: PredictRequest) {
  if (!uncertainty && !correlated) return undefined;
  return uncertaintyOf(build, { uncertainty: uncertainty ?? {}, correlated, samples, seed });
}

/** A propeller presses by its thrust, a ducted rotor through its skirt; the schema has seen that the skirt is there. */
function predictEither(request: PredictRequest) {
  const { rotor, skirt, air, motor, pack, supply, vehicle } = request;
  const rest = { air, motor, pack, supply, vehicle };
  if (rotor.kind === "propeller") {
    const build = { ...rest, rotor };
    return { ...predictPropeller(build), doubt: doubted(build, request) };
  }
  if (!skirt) throw new OutOfRangeError("skirt", Number.NaN, "a skirt: perimeter, area, gap, land");
  const build = { ...rest, rotor, skirt };
  return { ...predict(build), doubt: doubted(build, request) };
}

/** What a build does at one state, everything given inline. */
export const predictComputation = computation({
  path: "/predict",
  summary: "Operating point, suction force and what it holds, of a build given inline",
  request: predictRequest,
  response: predictResponse,
  compute: predictEither,
  isQuick: ({ uncertainty, correlated }) => !uncertainty && !correlated,
});
