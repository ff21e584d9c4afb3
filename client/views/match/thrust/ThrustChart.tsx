import { useRef, useState } from "preact/hooks";
import { Chart } from "../../../charts/Chart.tsx";
import { DataTable } from "../../../ui/DataTable.tsx";
import { SaveChart } from "../../../ui/SaveChart.tsx";
import { plotIn } from "../drawMatch.ts";
import { heightFor } from "../MatchChart.tsx";
import { ReadingPicker } from "../ReadingPicker.tsx";
import { drawThrust, thrustScales } from "./draw.ts";
import type { ThrustDrawing } from "./drawing.ts";
import { thrustTable } from "./table.ts";

export interface ThrustChartProps {
  readonly drawing: Omit<ThrustDrawing, "picked">;
  readonly sentence: string;
  readonly fileName: string;
}

/** Press force against speed, its readings under the pointer or the keyboard, its table, and ways to save it. */
export function ThrustChart({ drawing, sentence, fileName }: ThrustChartProps) {
  const svg = useRef<SVGSVGElement | null>(null);
  const [picked, setPicked] = useState<number | null>(null);
  const [size, setSize] = useState({ width: 0, height: 0 });
  const { measured } = drawing.picture;
  const chosen = picked !== null && picked < measured.length ? picked : null;
  const plot = plotIn(size);
  const scales = thrustScales(drawing, [0, plot.width], [plot.height, 0]);
  return (
    <>
      <Chart
        sentence={sentence}
        height={heightFor}
        svgRef={svg}
        draw={(element, drawn) => {
          drawThrust(element, { ...drawing, picked: chosen }, drawn);
          if (drawn.width !== size.width || drawn.height !== size.height) setSize(drawn);
        }}
      >
        {measured.length > 0 && size.width > 0 && (
          <ReadingPicker
            label="Measured readings, by speed"
            points={measured}
            plot={plot}
            scales={scales}
            picked={chosen}
            onPick={setPicked}
          />
        )}
      </Chart>
      <div class="chart-foot">
        <SaveChart
          name={fileName}
          svg={() => svg.current}
          table={() => thrustTable(drawing.picture, drawing.spread)}
        />
        <DataTable
          title="The picture as a table"
          table={() => thrustTable(drawing.picture, drawing.spread)}
        />
      </div>
    </>
  );
}
