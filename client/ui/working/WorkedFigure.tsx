import type { Book } from "../../../shared/book/book.ts";
import { marginText } from "../../../shared/decide/verdict/figures.ts";
import type { Board } from "../../../shared/physics/working.ts";
import type { Outcome } from "../../state/outcome.ts";
import { FigureOf } from "./FigureOf.tsx";
import type { Boards } from "./shown.ts";

const boards = () => import("./board.ts");

/** @returns the workings of the build on the screen, as it is tried */
export const boardNow = async (): Promise<Board> => (await boards()).boardNow();

/** @returns the workings of a solved build */
export const boardLater = async (book: Book, outcome: Outcome): Promise<Board> =>
  (await boards()).boardOf(book, outcome);

interface MarginFigureProps {
  /** one of the build's attitudes, or the worst [°] */
  readonly angle: number;
  readonly state: "parked" | "driving";
  /** null where no pull is needed [-] */
  readonly margin: number | null;
  /** joint of the surface that it stands over; none: beside any */
  readonly over?: string;
  /** of another build than the one on the screen */
  readonly board?: Boards;
}

/** A margin of the build on the screen; it shows its working where there is one. */
export function MarginFigure({ angle, state, margin, over, board }: MarginFigureProps) {
  if (margin === null || margin === 0) return <>{marginText(margin)}</>;
  const own = over === undefined ? boardNow : async () => (await boards()).boardNowOver(over);
  return (
    <FigureOf board={board ?? own} title={`margin at ${angle.toFixed(0)}°, ${state}`} value={margin}>
      {marginText(margin)}
    </FigureOf>
  );
}
