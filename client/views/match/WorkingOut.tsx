import { useState } from "preact/hooks";
import type { Resolved } from "../../../shared/book/resolve.ts";
import type { Prediction } from "../../../shared/physics/predict.ts";
import type { AnyPrediction } from "../../../shared/physics/predictAny.ts";
import { propellerWorkings } from "../../../shared/physics/propellerWorkings.ts";
import type { Working } from "../../../shared/physics/working.ts";
import { workingsOf } from "../../../shared/physics/workings.ts";
import { attitudeRows, type Outcome } from "../../state/outcome.ts";
import { WorkingOf } from "../../ui/WorkingOf.tsx";

/** How operating point, pull and margins came about, computed when it is opened. */
export function WorkingOut({ outcome }: { outcome: Outcome }) {
  const [open, setOpen] = useState(false);
  if (!outcome.prediction?.point) return null;
  return (
    <details class="working-out" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Show working</summary>
      {open && <Steps outcome={outcome} />}
    </details>
  );
}

const isOfCavity = (prediction: AnyPrediction): prediction is Prediction =>
  prediction.point === null || prediction.point.pressure !== null;

function stepsOf({ input, propeller }: Resolved, prediction: AnyPrediction, angles: number[]): Working[] {
  if (input && isOfCavity(prediction)) return workingsOf(input, prediction, angles);
  if (propeller && !isOfCavity(prediction)) return propellerWorkings(propeller, prediction, angles);
  return [];
}

function Steps({ outcome }: { outcome: Outcome }) {
  const { prediction, resolved } = outcome;
  if (!resolved || !prediction) return null;
  const angles = [...attitudeRows(outcome).map((row) => row.angle), prediction.worst.driving.angle];
  const workings = stepsOf(resolved, prediction, [...new Set(angles)]);
  return (
    <div>
      {workings.map((working) => (
        <WorkingOf key={working.title} working={working} />
      ))}
      <p class="quiet small">
        Margins are those of driving nose uphill, the lesser of climb and the parked ones.
      </p>
    </div>
  );
}
