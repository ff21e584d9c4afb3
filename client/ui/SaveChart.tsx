import { useState } from "preact/hooks";
import { download } from "./download.ts";
import { type Table, toCsv } from "./table.ts";

export interface SaveChartProps {
  /** the file's name without its ending */
  readonly name: string;
  readonly svg: () => SVGSVGElement | null;
  readonly table: () => Table;
}

/** Saves a chart as SVG, PNG or CSV. */
export function SaveChart({ name, svg, table }: SaveChartProps) {
  const [problem, setProblem] = useState<string | null>(null);
  const picture = async (format: "svg" | "png") => {
    const element = svg();
    if (!element) return setProblem("There is no chart to save yet.");
    const { pngOf, svgText } = await import("../charts/export.ts");
    try {
      const blob =
        format === "svg" ? new Blob([svgText(element)], { type: "image/svg+xml" }) : await pngOf(element);
      setProblem(null);
      download(blob, `${name}.${format}`);
    } catch (error) {
      if (!(error instanceof Error)) throw error;
      setProblem(error.message);
    }
  };
  return (
    <span class="save-chart">
      Save the chart as
      <button type="button" class="plain" onClick={() => void picture("svg")}>
        SVG
      </button>
      <button type="button" class="plain" onClick={() => void picture("png")}>
        PNG
      </button>
      <button
        type="button"
        class="plain"
        onClick={() => download(new Blob([toCsv(table())], { type: "text/csv" }), `${name}.csv`)}
      >
        CSV
      </button>
      {problem && <span class="bad">{problem}</span>}
    </span>
  );
}
