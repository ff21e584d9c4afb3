import { execFile } from "node:child_process";
import { writeFileSync } from "node:fs";
import { availableParallelism } from "node:os";
import { resolve } from "node:path";
import { promisify } from "node:util";
import { pageOf } from "./page.ts";
import { PART_NAMES, type PartName, type Results } from "./parts.ts";
import { rowsOf } from "./rows.ts";
import { buildSite } from "./site.ts";
import { tableText } from "./table.ts";

const PAGE = resolve("docs", "benchmarks.md");
const MOST_OUTPUT = 1e7;
const DAY = 10;

/** Each part in a process of its own, so that none warms or crowds another. */
async function measured(file: string, name: PartName): Promise<unknown> {
  process.stderr.write(`measuring: ${name}\n`);
  const { stdout } = await promisify(execFile)(process.execPath, [file, "--part", name], {
    maxBuffer: MOST_OUTPUT,
  });
  return JSON.parse(stdout.trim().split("\n").pop() ?? "");
}

async function everything(file: string): Promise<Results> {
  await buildSite();
  const parts: Partial<Record<PartName, unknown>> = {};
  for (const name of PART_NAMES) parts[name] = await measured(file, name);
  const machine = {
    cores: availableParallelism(),
    node: process.versions.node,
    date: new Date().toISOString().slice(0, DAY),
  };
  return { machine, ...parts } as Results;
}

/** Measures everything; prints one JSON object, or a table and writes the page in docs. */
export async function runAll(file: string, json: boolean): Promise<void> {
  const results = await everything(file);
  if (json) {
    console.log(JSON.stringify(results));
    return;
  }
  const rows = rowsOf(results);
  console.log(tableText(rows));
  writeFileSync(PAGE, pageOf(results, rows));
}
