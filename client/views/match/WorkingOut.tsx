import { useState } from "preact/hooks";
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

function Steps({ outcome }: { outcome: Outcome }) {
  const { prediction, resolved } = outcome;
  if (!resolved?.input || !prediction) return null;
  const angles = [...attitudeRows(outcome).map((row) => row.angle), prediction.worst.driving.angle];
  return (
    <div>
      {workingsOf(resolved.input, prediction, [...new Set(angles)]).map((working) => (
        <WorkingOf key={working.title} working={working} />
      ))}
      <p class="quiet small">
        Margins are those of driving nose uphill, the lesser of climb and the parked ones.
      </p>
    </div>
  );
}
