import type { Board } from "./board.ts";
import { Worked } from "./Worked.tsx";
import { shownInWorking } from "./workingText.ts";

/** Every figure of a board by name, each with its working. */
export function WorkingList({ board }: { readonly board: Board }) {
  return (
    <ul class="working-figures">
      {board.workings.map((working) => (
        <li key={working.title}>
          {working.title}:{" "}
          <Worked of={() => ({ working, board })} what={working.title}>
            {shownInWorking(working.result.value, working.result.unit)}
          </Worked>
        </li>
      ))}
    </ul>
  );
}
