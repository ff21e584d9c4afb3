import { useState } from "preact/hooks";
import type { Book } from "../../../shared/book/resolve.ts";
import type { Outcome } from "../../state/outcome.ts";
import { boardOf } from "../../ui/working/board.ts";
import { WorkingList } from "../../ui/working/WorkingList.tsx";

interface Props {
  readonly book: Book;
  readonly outcome: Outcome;
}

/** Every figure from the air to the margins, each with its working; computed when it is opened. */
export function WorkingOut({ book, outcome }: Props) {
  const [open, setOpen] = useState(false);
  if (!outcome.prediction?.point) return null;
  return (
    <details class="working-out" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Show working</summary>
      {open && <WorkingList board={boardOf(book, outcome)} />}
    </details>
  );
}
