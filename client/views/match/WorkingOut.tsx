import { useState } from "preact/hooks";
import type { Working as WorkingData } from "../../../shared/physics/working.ts";
import { workingsOf } from "../../../shared/physics/workings.ts";
import { Working, type WorkingValue } from "../../ui/Working.tsx";
import { attitudeRows, type Outcome } from "./model.ts";

const DIGITS = 5;
const [SMALL, LARGE] = [1e-3, 1e6];

/** Five digits, and powers of ten only where they are shorter. */
function shown(value: number, unit: string): string {
  const size = Math.abs(value);
  const plain = size === 0 || (size >= SMALL && size < LARGE);
  const text = plain ? String(Number(value.toPrecision(DIGITS))) : value.toExponential(DIGITS - 1);
  return unit === "" ? text : `${text}\u2009${unit}`;
}

function entry({ symbol, meaning, value, unit }: WorkingData["values"][number]): WorkingValue {
  return { symbol, meaning, text: shown(value, unit) };
}

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
        <Working
          key={working.title}
          title={working.title}
          equation={working.equation}
          values={working.values.map(entry)}
          result={shown(working.result.value, working.result.unit)}
          source={working.source}
        />
      ))}
      <p class="quiet small">
        Margins are those of driving nose uphill, the lesser of climb and the parked ones.
      </p>
    </div>
  );
}
