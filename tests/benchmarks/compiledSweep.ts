import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

const COMPILERS = ["cc", "gcc", "clang"];
const SOURCE = "tests/benchmarks/sweep.c";

const works = (command: string) => spawnSync(command, ["--version"]).status === 0;

/** @returns solves per second of one run, one core */
function runOnce(binary: string): number {
  const answer = JSON.parse(execFileSync(binary, { encoding: "utf8" })) as { solvesPerSecond: number };
  return answer.solvesPerSecond;
}

/** Runs something with the same loop compiled from C at -O2: what gives its solves per second, or null where no C compiler is found. */
export async function withCompiledSweep<T>(work: (sweep: (() => number) | null) => Promise<T>): Promise<T> {
  const compiler = COMPILERS.find(works);
  if (!compiler) return work(null);
  const folder = mkdtempSync(join(tmpdir(), "sweep-"));
  try {
    const binary = join(folder, "sweep");
    execFileSync(compiler, ["-O2", "-o", binary, SOURCE, "-lm"]);
    return await work(() => runOnce(binary));
  } finally {
    rmSync(folder, { recursive: true });
  }
}
