import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it, onTestFinished } from "vitest";
import { Jobs } from "#server/jobs/jobs.ts";
import { pool } from "#server/jobs/pool.ts";
import { steppingClock } from "#tests/server/support/book.ts";
import { chooseQuestion } from "#tests/support/chooseQuestion.ts";

function folder(): string {
  const made = mkdtempSync(join(tmpdir(), "gripcurve-pool-"));
  onTestFinished(() => rmSync(made, { recursive: true, force: true }));
  return made;
}

async function endOf(file: string) {
  const logged: unknown[] = [];
  const jobs = new Jobs(pool(file), steppingClock(), (error) => logged.push(error));
  const { request, question } = chooseQuestion();
  const { job } = jobs.start(request, question);
  await new Promise<void>((resolve) => {
    job.onEnd(resolve);
  });
  const report = job.report();
  await jobs.close();
  return { report, logged };
}

describe("pool, whose threads can't work", () => {
  it("because the worker's file is missing: the job fails, the server goes on", async () => {
    const { report, logged } = await endOf(join(folder(), "missing.js"));
    expect(report.state).toBe("failed");
    expect(logged.length).toBeGreaterThan(0);
  });

  it("because the worker throws as it starts: the job fails, the server goes on", async () => {
    const file = join(folder(), "broken.mjs");
    writeFileSync(file, 'throw new Error("no worker");\n');
    expect((await endOf(file)).report.state).toBe("failed");
  });

  it("because the worker ends in the middle of a piece: the job fails, the server goes on", async () => {
    const file = join(folder(), "ending.mjs");
    writeFileSync(file, "export const solve = () => process.exit(1);\n");
    expect((await endOf(file)).report.state).toBe("failed");
  });
});
