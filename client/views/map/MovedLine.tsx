import type { Book } from "../../../shared/book/book.ts";
import type { Outcome } from "../../state/outcome.ts";
import { MarginFigure } from "../../ui/working/WorkedFigure.tsx";
import type { Drawing } from "./mapPlot.ts";
import { movedParts } from "./mapWords.ts";

interface MovedLineProps {
  readonly book: Book;
  readonly outcome: Outcome;
  readonly drawing: Drawing;
}

/** What the build comes to where it is moved; its margin shows its working. */
export function MovedLine({ book, outcome, drawing }: MovedLineProps) {
  const { before, margin, after, solved } = movedParts(drawing);
  const { question, moved } = drawing;
  const board = () =>
    import("./placeBoard.ts").then(({ placeBoard }) => placeBoard(book, outcome, question, moved));
  return (
    <>
      {before}
      {solved.least && Number.isFinite(solved.margin) ? (
        <MarginFigure {...solved.least} margin={solved.margin} board={board} />
      ) : (
        margin
      )}
      {after}
    </>
  );
}
