import { marginText } from "../../../shared/decide/verdict/figures.ts";
import type { Board } from "../../../shared/physics/working.ts";
import { currentBook } from "../../state/book.ts";
import { shownOutcome } from "../../state/onScreen.ts";
import { boardOf, boardOver, NO_BOARD } from "./board.ts";
import { FigureOf } from "./FigureOf.tsx";

/** @returns the workings of the build on the screen, as it is tried */
export function boardNow(): Board {
  const [book, outcome] = [currentBook.value, shownOutcome.value];
  return book && outcome ? boardOf(book, outcome) : NO_BOARD;
}

function boardNowOver(joint: string): Board {
  const [book, outcome] = [currentBook.value, shownOutcome.value];
  return book && outcome ? boardOver(book, outcome, joint) : NO_BOARD;
}

interface MarginFigureProps {
  /** one of the build's attitudes, or the worst [°] */
  readonly angle: number;
  readonly state: "parked" | "driving";
  /** null where no pull is needed [-] */
  readonly margin: number | null;
  /** joint of the surface that it stands over; none: beside any */
  readonly over?: string;
  /** of another build than the one on the screen */
  readonly board?: () => Board;
}

/** A margin of the build on the screen; it shows its working where there is one. */
export function MarginFigure({ angle, state, margin, over, board }: MarginFigureProps) {
  if (margin === null || margin === 0) return <>{marginText(margin)}</>;
  const own = over === undefined ? boardNow : () => boardNowOver(over);
  return (
    <FigureOf board={board ?? own} title={`margin at ${angle.toFixed(0)}°, ${state}`} value={margin}>
      {marginText(margin)}
    </FigureOf>
  );
}
