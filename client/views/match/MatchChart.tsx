import { useRef, useState } from "preact/hooks";
import { Chart } from "../../charts/Chart.tsx";
import { DataTable } from "../../ui/DataTable.tsx";
import { SaveChart } from "../../ui/SaveChart.tsx";
import { drawMatch, type MatchDrawing, matchScales, plotIn } from "./drawMatch.ts";
import { ReadingPicker } from "./ReadingPicker.tsx";
import { pictureTable } from "./table.ts";

const SHAPE = 0.66;
const LEAST_HEIGHT = 340;
const MOST_HEIGHT = 620;

/** @returns height of the picture at a width [px] */
export function heightFor(width: number): number {
  return Math.round(Math.min(MOST_HEIGHT, Math.max(LEAST_HEIGHT, width * SHAPE)));
}

export interface MatchChartProps {
  readonly drawing: Omit<MatchDrawing, "picked">;
  readonly sentence: string;
  readonly fileName: string;
}

/** The picture, its readings under the pointer or the keyboard, its table, and ways to save it. */
export function MatchChart({ drawing, sentence, fileName }: MatchChartProps) {
  const svg = useRef<SVGSVGElement | null>(null);
  const [picked, setPicked] = useState<number | null>(null);
  const [size, setSize] = useState({ width: 0, height: 0 });
  const { measured } = drawing.picture;
  const table = () => pictureTable(drawing.picture, drawing.spread);
  const chosen = picked !== null && picked < measured.length ? picked : null;
  const plot = plotIn(size);
  const scales = matchScales({ ...drawing, picked: chosen }, [0, plot.width], [plot.height, 0]);
  return (
    <>
      <Chart
        sentence={sentence}
        height={heightFor}
        svgRef={svg}
        draw={(element, drawn) => {
          drawMatch(element, { ...drawing, picked: chosen }, drawn);
          if (drawn.width !== size.width || drawn.height !== size.height) setSize(drawn);
        }}
      >
        {measured.length > 0 && size.width > 0 && (
          <ReadingPicker points={measured} plot={plot} scales={scales} picked={chosen} onPick={setPicked} />
        )}
      </Chart>
      <div class="chart-foot">
        <SaveChart name={fileName} svg={() => svg.current} table={table} />
        <DataTable title="The picture as a table" table={table} />
      </div>
    </>
  );
}
