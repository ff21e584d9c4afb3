import type { Book } from "../../../shared/book/book.ts";
import { marginText } from "../../../shared/decide/verdict/figures.ts";
import type { Board } from "../../../shared/physics/working.ts";
import type { Outcome } from "../../state/outcome.ts";
import { FigureOf } from "./FigureOf.tsx";
import type { Boards } from "./shown.ts";

/** @returns the workings of the build on the screen, as it is tried */
export const boardNow = (): Promise<Board> => import("./board.ts").then(({ boardNow }) => boardNow());

/** @returns the workings of a solved build */
export const boardLater = (book: Book, outcome: Outcome): Promise<Board> =>
  import("./board.ts").then(({ boardOf }) => boardOf(book, outcome));

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
  const overJoint = () => import("./board.ts").then(({ boardNowOver }) => boardNowOver(over ?? ""));
  const own = over === undefined ? boardNow : overJoint;
  return (
    <FigureOf board={board ?? own} title={`margin at ${angle.toFixed(0)}°, ${state}`} value={margin}>
      {marginText(margin)}
    </FigureOf>
  );
}
