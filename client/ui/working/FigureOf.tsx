import type { ComponentChildren } from "preact";
import type { Board, Working } from "../../../shared/physics/working.ts";
import type { Boards, Shown } from "./shown.ts";
import { Worked } from "./Worked.tsx";

/** A figure's working: where it stands, and how it is known there. */
export interface WorkingOf {
  /** worked out, and what works it out fetched, when the figure is pressed */
  readonly board: Boards;
  /** of its working on that board */
  readonly title: string;
  /** as it is shown, where several figures have one title [SI] */
  readonly value?: number;
}

/** @returns the working that a figure leads to on its board; null where it has none */
export function shownOn(board: Board, { title, value }: Omit<WorkingOf, "board">): Shown | null {
  const titled = board.workings.filter((each) => each.title === title);
  const isShown = ({ result }: Working) => result.value === value;
  const working = titled.find(isShown) ?? board.workings.find(isShown) ?? titled[0];
  return working ? { working, board } : null;
}

interface FigureOfProps extends WorkingOf {
  readonly children: ComponentChildren;
}

/** A figure that is the result of one working of a board, which it shows when it is pressed. */
export function FigureOf({ children, ...of }: FigureOfProps) {
  return (
    <Worked of={async () => shownOn(await of.board(), of)} what={of.title}>
      {children}
    </Worked>
  );
}
