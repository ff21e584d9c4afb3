import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

const COMPILERS = ["cc", "gcc", "clang"];
const SOURCE = "tests/benchmarks/sweep.c";

const works = (command: string) => spawnSync(command, ["--version"]).status === 0;

/**
 * Solves per second of the same loop compiled from C at -O2, one core.
 *
 * @param runs - how often; the fastest and the slowest are left out by taking the median
 * @returns the median, or null where no C compiler is found
 */
export function compiledSolvesPerSecond(runs: number): number | null {
  const compiler = COMPILERS.find(works);
  if (!compiler) return null;
  const folder = mkdtempSync(join(tmpdir(), "sweep-"));
  try {
    const binary = join(folder, "sweep");
    execFileSync(compiler, ["-O2", "-o", binary, SOURCE, "-lm"]);
    const rates = Array.from({ length: runs }, () => {
      const answer = JSON.parse(execFileSync(binary, { encoding: "utf8" })) as { solvesPerSecond: number };
      return answer.solvesPerSecond;
    });
    return rates.sort((a, b) => a - b)[Math.floor(runs / 2)];
  } finally {
    rmSync(folder, { recursive: true });
  }
}
