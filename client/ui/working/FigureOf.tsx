import type { ComponentChildren } from "preact";
import type { Board, Working } from "../../../shared/physics/working.ts";
import { Worked } from "./Worked.tsx";

interface FigureOfProps {
  /** worked out when the figure is pressed */
  readonly board: () => Board;
  /** of its working on that board */
  readonly title: string;
  /** as it is shown, where several figures have one title [SI] */
  readonly value?: number;
  readonly children: ComponentChildren;
}

/** A figure that is the result of one working of a board, which it shows when it is pressed. */
export function FigureOf({ board, title, value, children }: FigureOfProps) {
  const shown = () => {
    const found = board();
    const titled = found.workings.filter((each) => each.title === title);
    const isShown = ({ result }: Working) => result.value === value;
    const working = titled.find(isShown) ?? found.workings.find(isShown) ?? titled[0];
    return working ? { working, board: found } : null;
  };
  return (
    <Worked of={shown} what={title}>
      {children}
    </Worked>
  );
}
