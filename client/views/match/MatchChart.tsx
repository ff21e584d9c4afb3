import { PlotChart } from "../../charts/PlotChart.tsx";
import { type MatchDrawing, matchPlot, placeWords } from "./matchPlot.ts";
import { pictureTable } from "./table.ts";

const SHAPE = 0.56;
const LEAST_HEIGHT = 340;
const MOST_HEIGHT = 620;

/** @returns height of the picture at a width [px] */
export function heightFor(width: number): number {
  return Math.round(Math.min(MOST_HEIGHT, Math.max(LEAST_HEIGHT, width * SHAPE)));
}

export interface MatchChartProps {
  readonly drawing: MatchDrawing;
  readonly sentence: string;
  readonly fileName: string;
}

/** Fan against leak, its points and readings under pointer or keyboard, its table, and ways to save it. */
export function MatchChart({ drawing, sentence, fileName }: MatchChartProps) {
  const { measured } = drawing.picture;
  const plot = matchPlot(drawing);
  return (
    <PlotChart
      plot={plot}
      sentence={sentence}
      height={heightFor}
      name={fileName}
      table={() => pictureTable(drawing.picture, drawing.spread)}
      reading={{
        label: "Operating points and readings",
        describe: (key) => placeWords(plot, measured, key),
      }}
    />
  );
}
