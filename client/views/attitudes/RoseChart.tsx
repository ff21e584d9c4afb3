import { useRef } from "preact/hooks";
import { Chart } from "../../charts/Chart.tsx";
import { DataTable } from "../../ui/DataTable.tsx";
import { SaveChart } from "../../ui/SaveChart.tsx";
import { bandText, beyondRim, roseSentence } from "./attitudeWords.ts";
import { drawRose, roseHeight } from "./drawRose.ts";
import type { Rose } from "./rose.ts";
import type { Stand } from "./stand.ts";
import { roseTable } from "./table.ts";

export interface RoseChartProps {
  readonly rose: Rose;
  /** the attitude asked about, where one is */
  readonly asked: Stand | null;
}

/** The half-rose, how to read it, its table, and ways to save it. */
export function RoseChart({ rose, asked }: RoseChartProps) {
  const svg = useRef<SVGSVGElement | null>(null);
  const beyond = beyondRim(rose);
  const name = `attitudes ${rose.outcome.build.name}`.toLowerCase().replace(/[^a-z0-9]+/g, "-");
  return (
    <>
      <Chart
        sentence={roseSentence(rose)}
        height={roseHeight}
        svgRef={svg}
        draw={(element, size) => drawRose(element, rose, asked, size)}
      />
      <p class="quiet small">
        Where the needed curve stays inside the arc of the pull made, the pull is enough. Dots: parked;
        dashes: driving nose uphill. The rings outside name what lets go first, parked inside, driving
        outside.
        {` ${bandText(rose)}`}
        {beyond && ` ${beyond}`}
      </p>
      <div class="chart-foot">
        <SaveChart name={name} svg={() => svg.current} table={() => roseTable(rose)} />
        <DataTable title="The picture as a table" table={() => roseTable(rose)} />
      </div>
    </>
  );
}
