import { uncertaintyOf } from "../../shared/decide/uncertainty.ts";
import { inlineCase } from "../../shared/decide/verdict/inlineCase.ts";
import { chanceOf, findingsOf } from "../../shared/decide/verdict/judge.ts";
import { told } from "../../shared/decide/verdict/told.ts";
import { verdictOf } from "../../shared/decide/verdict/verdict.ts";
import { type PredictRequest, predictRequest, predictResponse } from "../../shared/model/api/predict.ts";
import { OutOfRangeError } from "../../shared/numeric/errors.ts";
import { type AnyPredictInput, predictAny } from "../../shared/physics/predictAny.ts";
import { computation } from "./compute.ts";

function doubted(build: AnyPredictInput, { uncertainty, correlated, samples, seed }: PredictRequest) {
  if (!uncertainty && !correlated) return null;
  return uncertaintyOf(build, { uncertainty: uncertainty ?? {}, correlated, samples, seed });
}

/** A propeller presses by its thrust, a ducted rotor through its skirt; the schema has seen that the skirt is there. */
function buildOf({ rotor, skirt, air, motor, pack, supply, vehicle }: PredictRequest): AnyPredictInput {
  const rest = { air, motor, pack, supply, vehicle };
  if (rotor.kind === "propeller") return { ...rest, rotor };
  if (!skirt) throw new OutOfRangeError("skirt", Number.NaN, "a skirt: perimeter, area, gap, land");
  return { ...rest, rotor, skirt };
}

function predicted(request: PredictRequest) {
  const build = buildOf(request);
  const prediction = predictAny(build);
  const doubt = doubted(build, request);
  const { motorLimits, cellLimits, rotorBody, targetMargin } = request;
  const allowed = { motor: motorLimits, cell: cellLimits, rotor: rotorBody, target: targetMargin };
  const of = inlineCase(build, allowed);
  const chance = chanceOf(doubt, of.attitudes);
  const verdict = told(verdictOf({ ...findingsOf(of, prediction), chance }));
  return { ...prediction, verdict, doubt: doubt ?? undefined };
}

/** What a build does at one state, everything given inline. */
export const predictComputation = computation({
  path: "/predict",
  summary: "Operating point, pull, what it holds, and the verdict, of a build given inline",
  request: predictRequest,
  response: predictResponse,
  compute: predicted,
  isQuick: ({ uncertainty, correlated }) => !uncertainty && !correlated,
});
