import { useState } from "preact/hooks";
import type { LimitsInput } from "../../../../shared/decide/limits/input.ts";
import type { Limits } from "../../../../shared/decide/limits/limits.ts";
import { limitWorkings } from "../../../../shared/decide/limits/workings.ts";
import { WorkingOf } from "../../../ui/WorkingOf.tsx";

/** How the winding's and the rotor's figures came about, computed when it is opened. */
export function LimitWorkings({ input, limits }: { input: LimitsInput; limits: Limits }) {
  const [open, setOpen] = useState(false);
  return (
    <details class="working-out" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Show working</summary>
      {open &&
        limitWorkings(input, limits).map((working) => <WorkingOf key={working.title} working={working} />)}
    </details>
  );
}
