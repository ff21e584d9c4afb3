import type { RefObject } from "preact";
import { useState } from "preact/hooks";
import { download } from "../ui/download.ts";
import { type Table, toCsv } from "../ui/table.ts";
import type { Saved } from "./saved.ts";

export interface SaveProps extends Omit<Saved, "place"> {
  /** the file's name without its ending */
  readonly name: string;
  readonly place: RefObject<Element | null>;
  readonly table: () => Table;
}

/** Saves a chart as SVG, PNG or CSV. */
export function Save({ name, place, table, ...rest }: SaveProps) {
  const [problem, setProblem] = useState<string | null>(null);
  const picture = async (format: "svg" | "png") => {
    if (!place.current) return;
    const saved = { ...rest, place: place.current };
    const { pngOf, svgDocument } = await import("./saved.ts");
    try {
      const blob =
        format === "svg"
          ? new Blob([svgDocument(saved).text], { type: "image/svg+xml" })
          : await pngOf(saved);
      setProblem(null);
      download(blob, `${name}.${format}`);
    } catch (error) {
      if (!(error instanceof Error)) throw error;
      setProblem(error.message);
    }
  };
  const csv = () => download(new Blob([toCsv(table())], { type: "text/csv" }), `${name}.csv`);
  return (
    <span class="save-chart">
      Save the chart as
      <button type="button" class="plain" onClick={() => void picture("svg")}>
        SVG
      </button>
      <button type="button" class="plain" onClick={() => void picture("png")}>
        PNG
      </button>
      <button type="button" class="plain" onClick={csv}>
        CSV
      </button>
      {problem && <span class="bad">{problem}</span>}
    </span>
  );
}
