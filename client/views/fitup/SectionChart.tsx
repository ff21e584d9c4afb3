import { useRef } from "preact/hooks";
import type { FitStack } from "../../../shared/book/fitUp/fitStack.ts";
import type { StackedParts } from "../../../shared/book/fitUp/partSizes.ts";
import { Chart } from "../../charts/Chart.tsx";
import { DataTable } from "../../ui/DataTable.tsx";
import { SaveChart } from "../../ui/SaveChart.tsx";
import type { Table } from "../../ui/table.ts";
import { drawSection, sectionHeight } from "./drawSection.ts";
import { fitSentence, VERDICT_WORDS } from "./fitWords.ts";
import { panelsOf } from "./section.ts";

const MM = 1000;

function fitTable(fits: readonly FitStack[]): Table {
  return {
    columns: [
      "Stack",
      "Left, mm",
      "Worst case from, mm",
      "to, mm",
      "RSS from, mm",
      "to (RSS), mm",
      "Verdict",
    ],
    rows: fits.map(({ name, stack }) =>
      stack
        ? [
            name,
            ...[stack.clearance, ...stack.worstCase, ...stack.rss].map((metres) => MM * metres),
            VERDICT_WORDS[stack.verdict],
          ]
        : [name, null, null, null, null, null, "a size is missing"],
    ),
  };
}

export interface SectionChartProps {
  readonly name: string;
  readonly fits: readonly FitStack[];
  readonly parts: StackedParts;
}

/** Every stack in section, to one scale, with its table and ways to save it. */
export function SectionChart({ name, fits, parts }: SectionChartProps) {
  const svg = useRef<SVGSVGElement | null>(null);
  const panels = panelsOf(fits, parts);
  if (panels.length === 0) return null;
  const file = `fit-up ${name}`.toLowerCase().replace(/[^a-z0-9]+/g, "-");
  return (
    <>
      <Chart
        sentence={fitSentence(fits)}
        height={(width) => sectionHeight(panels, width)}
        svgRef={svg}
        draw={(element, size) => drawSection(element, panels, size)}
      />
      <div class="chart-foot">
        <SaveChart name={file} svg={() => svg.current} table={() => fitTable(fits)} />
        <DataTable title="The picture as a table" table={() => fitTable(fits)} />
      </div>
    </>
  );
}
