import type { Board } from "../../../../shared/physics/working.ts";
import { NO_BOARD } from "../../../ui/working/board.ts";
import { fitBoard, inUse } from "../fitBoard.ts";
import type { PullPage } from "./pullData.ts";

/** @returns how measured over predicted came about, down to the pull tests */
export function pullBoard({ ratio, points }: PullPage): Board {
  if (!ratio) return NO_BOARD;
  const compared = inUse(points).filter(({ predicted }) => predicted !== null && predicted > 0);
  const told = {
    title: "pulls over the prediction, in the median",
    equation: "r = median of F_i/F_predicted",
    output: ["r", ""] as const,
    source: "interval-censored maximum likelihood; docs/method/fits/pull.md",
    assumptions: [
      "Each pull is a bracket: what it held and what it let go at; between them it is not known.",
      "Pulls scatter log-normally about the prediction.",
    ],
  };
  return fitBoard([{ told, value: ratio.median, error: null, rows: [] }], compared);
}
