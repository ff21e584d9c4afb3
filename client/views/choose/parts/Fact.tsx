import type { Book } from "../../../../shared/book/book.ts";
import type { ChooseRequest } from "../../../../shared/model/api/choose.ts";
import type { Build } from "../../../../shared/model/build.ts";
import { FigureOf } from "../../../ui/working/FigureOf.tsx";
import type { Column, Combination } from "../answers.ts";
import { isMargin, valueText } from "../columns.ts";
import { isOpenCombination } from "../words/combination.ts";
import { factBoard, factTitle } from "./factWorkings.ts";

export interface FactProps {
  readonly book: Book;
  /** gives what a combination doesn't; null where the book no longer has it */
  readonly base: Build | null;
  readonly combination: Combination;
  readonly wants: ChooseRequest["wants"];
  readonly column: Column;
  /** as it stands there; with its unit unless given */
  readonly text?: string;
}

/** A figure of a combination, with its working. */
export function Fact({ column, book, base, combination, wants, text }: FactProps) {
  const value = combination.values[column];
  const title = factTitle(column, isOpenCombination(combination));
  const shown = text ?? valueText(column, value);
  // No pull suffices, so there is no margin to work out.
  const isNone = isMargin(column) && value === 0;
  if (!base || !title || value === null || isNone || !Number.isFinite(value)) return <>{shown}</>;
  return (
    <FigureOf board={() => factBoard(book, base, combination, wants)} title={title} value={value}>
      {shown}
    </FigureOf>
  );
}
