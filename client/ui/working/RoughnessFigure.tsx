import type { SurfaceRoughness } from "../../../shared/book/roughnessBasis.ts";
import { ALLOWANCE_TITLE, FURTHER_TITLE } from "../../../shared/book/roughnessTitles.ts";
import { roughnessText } from "../roughnessWords.ts";
import { FigureOf } from "./FigureOf.tsx";

interface RoughnessFigureProps {
  readonly roughness: SurfaceRoughness;
}

const boardOf = (roughness: SurfaceRoughness) => () =>
  import("../../../shared/book/roughnessWorkings.ts").then(({ roughnessBoard }) => roughnessBoard(roughness));

/** A surface's roughness allowance; where leak tests tell it, with its working. */
export function RoughnessFigure({ roughness }: RoughnessFigureProps) {
  const { basis, value, sd } = roughness;
  const text = roughnessText(value, sd);
  if (basis === "stated") return <>{text}</>;
  return (
    <FigureOf board={boardOf(roughness)} title={ALLOWANCE_TITLE} value={value}>
      {text}
    </FigureOf>
  );
}

/** How much further the lip stands off than on a smoother surface, with its working; nothing where no tests can be compared. */
export function FurtherFigure({ roughness }: RoughnessFigureProps) {
  const { told } = roughness;
  if (!told) return null;
  return (
    <FigureOf board={boardOf(roughness)} title={FURTHER_TITLE} value={told.difference}>
      {roughnessText(told.difference, told.uncertainty)}
    </FigureOf>
  );
}
