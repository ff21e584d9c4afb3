import { PlotChart } from "../../../charts/PlotChart.tsx";
import { heightFor } from "../MatchChart.tsx";
import { placeWords } from "../matchPlot.ts";
import { thrustTable } from "./table.ts";
import { type ThrustDrawing, thrustPlot } from "./thrustPlot.ts";

export interface ThrustChartProps {
  readonly drawing: ThrustDrawing;
  readonly sentence: string;
  readonly fileName: string;
}

/** Pull against speed, its points and readings under pointer or keyboard, its table, and ways to save it. */
export function ThrustChart({ drawing, sentence, fileName }: ThrustChartProps) {
  const { measured } = drawing.picture;
  const plot = thrustPlot(drawing);
  return (
    <PlotChart
      plot={plot}
      sentence={sentence}
      height={heightFor}
      name={fileName}
      table={() => thrustTable(drawing.picture, drawing.spread)}
      reading={{
        label: "Operating points and readings",
        describe: (key) => placeWords(plot, measured, key),
      }}
    />
  );
}
