import type { ComponentChildren } from "preact";
import { marginText } from "../../../shared/decide/verdict/figures.ts";
import type { Working } from "../../../shared/physics/working.ts";
import { currentBook } from "../../state/book.ts";
import { shownOutcome } from "../../state/onScreen.ts";
import { type Board, boardOf } from "./board.ts";
import { Worked } from "./Worked.tsx";

/** @returns the workings of the build on the screen, as it is tried */
export function boardNow(): Board {
  const [book, outcome] = [currentBook.value, shownOutcome.value];
  return book && outcome ? boardOf(book, outcome) : { workings: [], origins: [] };
}

interface WorkedFigureProps {
  /** the working of this figure among those of the build on the screen */
  readonly find: (board: Board) => Working | null;
  readonly what: string;
  readonly children: ComponentChildren;
}

/** A figure of the build on the screen, as it is tried, which shows its working when it is pressed. */
export function WorkedFigure({ find, what, children }: WorkedFigureProps) {
  const shown = () => {
    const board = boardNow();
    const working = find(board);
    return working ? { working, board } : null;
  };
  return (
    <Worked of={shown} what={what}>
      {children}
    </Worked>
  );
}

interface MarginFigureProps {
  /** one of the build's attitudes, or the worst [°] */
  readonly angle: number;
  readonly state: "parked" | "driving";
  /** null where no pull is needed [-] */
  readonly margin: number | null;
}

/** A margin of the build on the screen; it shows its working where there is one. */
export function MarginFigure({ angle, state, margin }: MarginFigureProps) {
  if (margin === null || margin === 0) return <>{marginText(margin)}</>;
  const find = ({ workings }: Board) =>
    workings.find(({ result }) => result.symbol === "margin" && result.value === margin) ??
    workings.find(({ title }) => title === `margin at ${angle.toFixed(0)}°, ${state}`) ??
    null;
  return (
    <WorkedFigure find={find} what={`the margin at ${angle.toFixed(0)}°, ${state}`}>
      {marginText(margin)}
    </WorkedFigure>
  );
}
