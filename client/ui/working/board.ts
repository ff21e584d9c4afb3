import { originsOf } from "../../../shared/book/origins.ts";
import type { Book } from "../../../shared/book/resolve.ts";
import type { Prediction } from "../../../shared/physics/predict.ts";
import type { AnyPrediction } from "../../../shared/physics/predictAny.ts";
import { propellerWorkings } from "../../../shared/physics/propellerWorkings.ts";
import type { Origin, Working } from "../../../shared/physics/working.ts";
import { workingsOf } from "../../../shared/physics/workings.ts";
import { attitudeRows, type Outcome } from "../../state/outcome.ts";

/** Everything that the working of a figure may lead down to. */
export interface Board {
  readonly workings: readonly Working[];
  readonly origins: readonly Origin[];
}

const isOfCavity = (prediction: AnyPrediction): prediction is Prediction =>
  prediction.point === null || prediction.point.pressure !== null;

function workingsFor({ resolved, prediction }: Outcome, angles: readonly number[]): Working[] {
  if (!resolved || !prediction) return [];
  const { input, propeller } = resolved;
  if (input && isOfCavity(prediction)) return workingsOf(input, prediction, angles);
  if (propeller && !isOfCavity(prediction)) return propellerWorkings(propeller, prediction, angles);
  return [];
}

const SOLVED = "Found by the solver, where rotor and leak have one pressure and motor and rotor one torque.";

/** What the solver found: no equation gives it in one step. */
function solvedOrigins({ point }: AnyPrediction): Origin[] {
  if (!point) return [];
  const found = { ω: point.speed, ...(point.pressure === null ? {} : { φ: point.phi }) };
  return Object.entries(found).map(([symbol, value]) => ({ symbol, value, what: SOLVED, tests: [] }));
}

/** @returns the workings of a solved build, margins at its own attitudes and at the worst ones, and where their numbers come from */
export function boardOf(book: Book, outcome: Outcome): Board {
  const { build, resolved, prediction } = outcome;
  if (!resolved || !prediction) return { workings: [], origins: [] };
  const { parked, driving } = prediction.worst;
  const angles = [...attitudeRows(outcome).map(({ angle }) => angle), parked.angle, driving.angle];
  return {
    workings: workingsFor(outcome, [...new Set(angles)]),
    origins: [...originsOf({ book, build, resolved }), ...solvedOrigins(prediction)],
  };
}
