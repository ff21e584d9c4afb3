import { useEffect, useState } from "preact/hooks";
import type { Board } from "../../../shared/physics/working.ts";
import { Problem } from "../Problem.tsx";
import type { Boards } from "./shown.ts";
import { Worked } from "./Worked.tsx";
import { resultText } from "./workingText.ts";

interface ShowWorkingProps {
  /** worked out when it is opened */
  readonly of: Boards;
  /** by title, those that are listed; the others are only led down to. All unless given */
  readonly listed?: (title: string) => boolean;
}

/** Every figure of a board by name, each with its working; folded up until it is asked for. */
export function ShowWorking({ of, listed = () => true }: ShowWorkingProps) {
  const [open, setOpen] = useState(false);
  return (
    <details class="working-out" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Show working</summary>
      {open && <Opened of={of} listed={listed} />}
    </details>
  );
}

function Opened({ of, listed }: { readonly of: Boards; readonly listed: (title: string) => boolean }) {
  const [board, setBoard] = useState<Board | null>(null);
  const [failed, setFailed] = useState(false);
  useEffect(() => {
    let wanted = true;
    void (async () => of())().then(
      (found) => wanted && setBoard(found),
      () => wanted && setFailed(true),
    );
    return () => {
      wanted = false;
    };
  }, [of]);
  if (failed) return <Problem message="The working could not be loaded; reload the page." />;
  return board && <Figures board={board} listed={listed} />;
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
