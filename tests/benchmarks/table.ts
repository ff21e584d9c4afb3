import type { Row } from "./row.ts";

const HEADS: readonly string[] = ["what", "measured", "budget", "kept?"];

const verdict = ({ kept, budget }: Row): string => {
  if (kept === null) return budget === "" ? "" : "not measured";
  return kept ? "kept" : "missed";
};

const cellsOf = (row: Row): string[] => [row.what, row.measured, row.budget, verdict(row)];

/** @returns the table for a terminal */
export function tableText(rows: readonly Row[]): string {
  const lines = [HEADS, ...rows.map(cellsOf)];
  const widths = HEADS.map((_, i) => Math.max(...lines.map((cells) => cells[i].length)));
  return lines
    .map((cells) =>
      cells.map((cell, i) => (i === 0 ? cell.padEnd(widths[i]) : cell.padStart(widths[i]))).join("  "),
    )
    .join("\n");
}

/** @returns the table for a page */
export function tableMarkdown(rows: readonly Row[]): string {
  const line = (cells: readonly string[]) => `| ${cells.join(" | ")} |`;
  return [line(HEADS), "| --- | ---: | ---: | --- |", ...rows.map((row) => line(cellsOf(row)))].join("\n");
}
