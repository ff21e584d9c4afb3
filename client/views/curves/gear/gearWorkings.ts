import type { Board, Row } from "../../../../shared/physics/working.ts";
import { NO_BOARD } from "../../../ui/working/board.ts";
import { fitBoard, inUse } from "../fitBoard.ts";
import type { GearPage } from "./gearData.ts";

/** @returns how the stiffness of a running gear and the height of its lip came about */
export function gearFitBoard({ points, tested }: GearPage): Board {
  const { fit, uncertainty } = tested;
  if (!fit) return NO_BOARD;
  const told = {
    equation: "h = h₀ − N/k,  least Σ (h_i − h₀ + N_i/k)²",
    source: "least squares, one stiffness over all tests; docs/method/fits/ride-height.md",
    assumptions: ["The lip comes down in proportion to the load, all tyres and springs together."],
  };
  const rows: Row[] = [
    ...(fit.residualSd === null
      ? []
      : [[["s", "scatter of the heights about the line", "m"], fit.residualSd] as const]),
  ];
  return fitBoard(
    [
      {
        told: { ...told, title: "stiffness of the running gear", output: ["k", "N/m"] },
        value: fit.stiffness,
        error: uncertainty,
        rows,
      },
      {
        told: { ...told, title: "height of the lip without load", output: ["h₀", "m"] },
        value: fit.heights[0],
        error: fit.standardErrors.height,
        rows,
      },
    ],
    // One with the skirt on the surface is none of the line's.
    inUse(points).filter(({ height }) => height > 0),
  );
}
