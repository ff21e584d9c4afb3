import type { Results } from "./parts.ts";
import type { Row } from "./rows.ts";
import { tableMarkdown } from "./table.ts";

const INTRODUCTION = `Written by \`npm run bench\`; \`npm run bench -- --json\` prints the same as one JSON object. Ratios and medians of one run are what to look at: seconds are of one machine, on one day.`;

/** @returns docs/benchmarks.md */
export function pageOf({ machine }: Results, rows: readonly Row[]): string {
  const { cores, node, date } = machine;
  return `# Benchmarks\n\n${INTRODUCTION}\n\nThis run: ${date}, ${cores} cores, Node ${node}.\n\n${tableMarkdown(rows)}\n`;
}
