import { useState } from "preact/hooks";
import type { Board } from "../../../shared/physics/working.ts";
import { Worked } from "./Worked.tsx";
import { resultText } from "./workingText.ts";

interface ShowWorkingProps {
  /** worked out when it is opened */
  readonly of: () => Board;
  /** by title, those that are listed; the others are only led down to. All unless given */
  readonly listed?: (title: string) => boolean;
}

/** Every figure of a board by name, each with its working; folded up until it is asked for. */
export function ShowWorking({ of, listed = () => true }: ShowWorkingProps) {
  const [open, setOpen] = useState(false);
  return (
    <details class="working-out" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Show working</summary>
      {open && <Figures board={of()} listed={listed} />}
    </details>
  );
}

function Figures({ board, listed }: { readonly board: Board; readonly listed: (title: string) => boolean }) {
  return (
    <ul class="working-figures">
      {board.workings
        .filter(({ title }) => listed(title))
        .map((working) => (
          <li key={working.title}>
            {working.title}:{" "}
            <Worked of={() => ({ working, board })} what={working.title}>
              {resultText(working)}
            </Worked>
          </li>
        ))}
    </ul>
  );
}
