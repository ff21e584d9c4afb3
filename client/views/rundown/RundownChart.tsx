import { useRef } from "preact/hooks";
import { Chart } from "../../charts/Chart.tsx";
import { DataTable } from "../../ui/DataTable.tsx";
import { SaveChart } from "../../ui/SaveChart.tsx";
import type { Answered } from "./answer.ts";
import { drawRundown, rundownHeight } from "./drawRundown.ts";
import { rundownTable } from "./table.ts";
import { pictureSentence } from "./words.ts";

/** The picture, its table, and ways to save it. */
export function RundownChart({ answered, build }: { answered: Answered; build: string }) {
  const svg = useRef<SVGSVGElement | null>(null);
  const name = `run-down ${build}`.toLowerCase().replace(/[^a-z0-9]+/g, "-");
  return (
    <>
      <Chart
        sentence={pictureSentence(answered, build)}
        height={rundownHeight(answered)}
        svgRef={svg}
        draw={(element, size) => drawRundown(element, answered, size)}
      />
      <p class="quiet small">
        Above the dotted line at 1 it holds while it drives nose uphill, below it lets go; a ring marks where.
        Parked it holds at least as long.
      </p>
      <div class="chart-foot">
        <SaveChart name={name} svg={() => svg.current} table={() => rundownTable(answered)} />
        <DataTable title="The picture as a table" table={() => rundownTable(answered)} />
      </div>
    </>
  );
}
