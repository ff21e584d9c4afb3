import { useRef, useState } from "preact/hooks";
import { Chart } from "../../../charts/Chart.tsx";
import { DataTable } from "../../../ui/DataTable.tsx";
import { SaveChart } from "../../../ui/SaveChart.tsx";
import type { Table } from "../../../ui/table.ts";
import { Legend } from "../Legend.tsx";
import { drawPlot } from "./draw.ts";
import type { Spot } from "./nearest.ts";
import { PointReader } from "./PointReader.tsx";
import type { Plot } from "./plot.ts";

export interface PlotChartProps {
  /** one sentence that says what the picture shows */
  readonly sentence: string;
  readonly plot: Plot;
  readonly height: (width: number) => number;
  /** of the saved files and of the table */
  readonly name: string;
  readonly tableTitle: string;
  readonly table: () => Table;
  /** what a point says of itself, a line each: its test first */
  readonly describe: (key: string) => readonly string[];
  readonly chosen: string | null;
  readonly onChoose: (key: string) => void;
}

/** A chart with its readable points, its table, and its ways to be saved. */
export function PlotChart(props: PlotChartProps) {
  const { plot, chosen } = props;
  const svg = useRef<SVGSVGElement | null>(null);
  const [spots, setSpots] = useState<readonly Spot[]>([]);
  const latest = useRef("");
  const draw = (element: SVGSVGElement, size: { width: number; height: number }) => {
    const found = drawPlot(element, size, plot, chosen);
    const places = JSON.stringify(found);
    if (places === latest.current) return;
    latest.current = places;
    setSpots(found);
  };
  return (
    <figure class="curves-figure">
      <Chart sentence={props.sentence} draw={draw} height={props.height} svgRef={svg}>
        {spots.length > 0 && (
          <PointReader
            spots={spots}
            describe={props.describe}
            chosen={chosen}
            onChoose={props.onChoose}
            label={`Points of the chart. ${props.sentence}`}
          />
        )}
      </Chart>
      {!plot.namedAbove && <Legend plot={plot} />}
      <figcaption class="curves-caption">
        <DataTable title={props.tableTitle} table={props.table()} />
        <SaveChart name={props.name} svg={() => svg.current} table={props.table} />
      </figcaption>
    </figure>
  );
}
