import { Fragment } from "preact";
import type { Book } from "../../../../shared/book/book.ts";
import { FigureOf } from "../../../ui/working/FigureOf.tsx";
import type { PartFigure } from "./figures.ts";

interface FigureLineProps {
  readonly book: Book;
  readonly collection: string;
  readonly id: string;
  readonly figures: readonly PartFigure[];
}

/** A part's figures in one line; those that tests say open to their working. */
export function FigureLine({ book, collection, id, figures }: FigureLineProps) {
  const board = () => import("./partBoard.ts").then(({ partBoard }) => partBoard(book, collection, id));
  return (
    <>
      {figures.map(({ text, title, value }, i) => (
        <Fragment key={text}>
          {i > 0 && " · "}
          {title === undefined ? (
            text
          ) : (
            <FigureOf board={board} title={title} value={value}>
              {text}
            </FigureOf>
          )}
        </Fragment>
      ))}
    </>
  );
}
