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

const sweep = timedSweep();
if (process.argv.includes("--json")) {
  console.log(JSON.stringify({ sweep }));
} else {
  console.log(`sweep of ${SWEEP_SIZE} operating points, one core, median of ${RUNS} runs`);
  console.log(`  solves per second  ${Math.round(sweep.solvesPerSecond)}`);
  console.log(`  sum of pressure    ${sweep.sums.pressure.toExponential(10)} Pa`);
  console.log(`  sum of speed       ${sweep.sums.speed.toExponential(10)} rad/s`);
  console.log(`  sum of flow        ${sweep.sums.flow.toExponential(10)} m³/s`);
}
