import { fileURLToPath } from "node:url";
import { isMainThread } from "node:worker_threads";
import { serveTasks } from "./chooseWorker.ts";
import { runPart } from "./parts.ts";
import { runAll } from "./runAll.ts";

/** `npm run bench` prints a table and writes docs/benchmarks.md; `npm run bench -- --json` prints one JSON object. */
const PART = "--part";

const file = fileURLToPath(import.meta.url);
const part = process.argv[process.argv.indexOf(PART) + 1];
if (!isMainThread) serveTasks();
else if (process.argv.includes(PART)) console.log(JSON.stringify(await runPart(part, file)));
else await runAll(file, process.argv.includes("--json"));
