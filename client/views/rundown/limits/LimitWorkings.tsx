import { useState } from "preact/hooks";
import { originsOf } from "../../../../shared/book/origins.ts";
import type { Book } from "../../../../shared/book/resolve.ts";
import type { LimitsInput } from "../../../../shared/decide/limits/input.ts";
import type { Limits } from "../../../../shared/decide/limits/limits.ts";
import { limitWorkings } from "../../../../shared/decide/limits/workings.ts";
import type { Outcome } from "../../../state/outcome.ts";
import { WorkingList } from "../../../ui/working/WorkingList.tsx";

interface Props {
  readonly book: Book;
  readonly outcome: Outcome;
  readonly input: LimitsInput;
  readonly limits: Limits;
}

/** How the winding's and the rotor's figures came about, computed when it is opened. */
export function LimitWorkings(props: Props) {
  const [open, setOpen] = useState(false);
  return (
    <details class="working-out" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Show working</summary>
      {open && <Figures {...props} />}
    </details>
  );
}

function Figures({ book, outcome: { build, resolved }, input, limits }: Props) {
  const origins = resolved ? originsOf({ book, build, resolved }) : [];
  return <WorkingList board={{ workings: limitWorkings(input, limits), origins }} />;
}
