import { fileURLToPath } from "node:url";
import { isMainThread } from "node:worker_threads";
import { type ChooseTimes, timedChoose } from "./chooseBench.ts";
import { serveTasks } from "./chooseWorker.ts";
import { compiledSolvesPerSecond } from "./compiledSweep.ts";
import { runSweep, SWEEP_SIZE, sweepTables } from "./sweepCases.ts";

/** `npm run bench` prints a table; `npm run bench -- --json` prints one JSON object. */
const RUNS = 5;

function timedSweep() {
  const tables = sweepTables();
  runSweep(tables, 0, SWEEP_SIZE / 10);
  const runs = Array.from({ length: RUNS }, () => {
    const start = performance.now();
    const sums = runSweep(tables);
    return { seconds: (performance.now() - start) / 1000, sums };
  });
  const seconds = runs.map((run) => run.seconds).sort((a, b) => a - b)[Math.floor(RUNS / 2)];
  return { solvesPerSecond: SWEEP_SIZE / seconds, sums: runs[0].sums };
}

function printChoose(choose: ChooseTimes): void {
  console.log(
    `choosing from ${choose.sets} sets, ${choose.threads} threads, median: solve, limits, rank, front`,
  );
  console.log(`  seconds            ${choose.seconds.toFixed(2)}`);
  console.log(
    `  of the bare solves ${choose.ratioToBare.toFixed(2)} times (${choose.bareSeconds.toFixed(2)} s)`,
  );
  console.log(`  peak memory        ${Math.round(choose.peakMemory)} MB`);
  console.log(`  meet the limits    ${choose.meeting}, non-dominated ${choose.nonDominated}`);
}

async function run(): Promise<void> {
  const choose = await timedChoose(fileURLToPath(import.meta.url));
  const { solvesPerSecond, sums } = timedSweep();
  const compiled = compiledSolvesPerSecond(RUNS);
  const ratioToC = compiled === null ? null : solvesPerSecond / compiled;
  if (process.argv.includes("--json")) {
    console.log(JSON.stringify({ sweep: { solvesPerSecond, ratioToC, sums }, choose }));
    return;
  }
  console.log(`sweep of ${SWEEP_SIZE} operating points, one core, median of ${RUNS} runs`);
  console.log(`  solves per second  ${Math.round(solvesPerSecond)}`);
  console.log(`  ratio to C at -O2  ${ratioToC === null ? "no C compiler found" : ratioToC.toFixed(2)}`);
  console.log(`  sum of pressure    ${sums.pressure.toExponential(10)} Pa`);
  console.log(`  sum of speed       ${sums.speed.toExponential(10)} rad/s`);
  console.log(`  sum of flow        ${sums.flow.toExponential(10)} m³/s`);
  printChoose(choose);
}

if (isMainThread) await run();
else serveTasks();
