import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout } from "node:timers/promises";
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from "vitest";
import { Jobs } from "#server/jobs/jobs.ts";
import { sealed } from "#server/jobs/question.ts";
import { Refusal } from "#server/refusal.ts";
import { pool } from "#server/threads/pool.ts";
import { done, type TaskName } from "#server/threads/tasks.ts";
import { type Threads, TooBusyError } from "#server/threads/threads.ts";
import { buildServer } from "#tests/durability/support/server.ts";
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
  const { job } = jobs.start(request, sealed(question));
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
    writeFileSync(file, "export default () => process.exit(1);\n");
    expect((await endOf(file)).report.state).toBe("failed");
  });
});

/** A worker that says which thread it is; what it is to solve holds it until it is let go. */
const SAYING = `import { threadId } from "node:worker_threads";
export default ({ name, input }) => {
  if (name === "solve") {
    Atomics.store(input, 0, threadId);
    Atomics.wait(input, 1, 0);
  }
  return threadId;
};
`;

describe("pool, asked for what takes long in a thread that never did it", () => {
  const ask = (threads: Threads, name: string, input: unknown = null): Promise<number> =>
    threads.run(name as TaskName, input as never) as unknown as Promise<number>;
  const letGo = (held: Int32Array) => {
    Atomics.store(held, 1, 1);
    Atomics.notify(held, 1);
  };

  it("waits for the thread that did it, which is busy with a piece, though others are free sooner", async () => {
    const file = join(folder(), "saying.mjs");
    writeFileSync(file, SAYING);
    const threads = pool(file);
    onTestFinished(() => threads.close());
    const home = await ask(threads, "question");
    const pieces = Array.from({ length: threads.count }, () => {
      const held = new Int32Array(new SharedArrayBuffer(2 * Int32Array.BYTES_PER_ELEMENT));
      return { held, end: ask(threads, "solve", held) };
    });
    while (pieces.some(({ held }) => Atomics.load(held, 0) === 0)) await setTimeout(5);
    const question = ask(threads, "question");
    const isHome = ({ held }: { readonly held: Int32Array }) => Atomics.load(held, 0) === home;
    for (const { held, end } of pieces.filter((piece) => !isHome(piece))) {
      letGo(held);
      await end;
    }
    expect(await Promise.race([question, setTimeout(50, "it waits")])).toBe("it waits");
    for (const { held } of pieces.filter(isHome)) letGo(held);
    expect(await question).toBe(home);
  });

  it("does not wait where that thread is busy with something long", async () => {
    const file = join(folder(), "saying.mjs");
    writeFileSync(file, SAYING.replace('"solve"', '"record"'));
    const threads = pool(file);
    onTestFinished(() => threads.close());
    const home = await ask(threads, "question");
    const held = new Int32Array(new SharedArrayBuffer(2 * Int32Array.BYTES_PER_ELEMENT));
    const long = ask(threads, "record", held);
    while (Atomics.load(held, 0) === 0) await setTimeout(5);
    if (threads.count > 1) expect(await ask(threads, "question")).not.toBe(home);
    letGo(held);
    await long;
  });
});

/** A worker whose thread ends with the first thing that it is to solve, once it is let go; anything else is answered. */
const ENDING = `export default ({ name, input }) => {
  if (name !== "solve") return name;
  Atomics.add(input, 0, 1);
  Atomics.wait(input, 1, 0);
  process.exit(1);
};
`;

describe("pool, every thread of which ends while something waits for one", () => {
  it("does what waits in a thread that it starts anew, without a further task", async () => {
    const file = join(folder(), "ending-later.mjs");
    writeFileSync(file, ENDING);
    const threads = pool(file);
    onTestFinished(() => threads.close());
    const held = new Int32Array(new SharedArrayBuffer(2 * Int32Array.BYTES_PER_ELEMENT));
    const ends = Array.from({ length: threads.count }, () =>
      expect(threads.run("solve", held as never)).rejects.toThrow(),
    );
    while (Atomics.load(held, 0) < threads.count) await setTimeout(5);
    const waits = threads.run("record", null as never);
    Atomics.store(held, 1, 1);
    Atomics.notify(held, 1);
    await Promise.all(ends);
    expect(await waits).toBe("record");
  });

  it("given up by all who asked for what runs: does what waits all the same", async () => {
    const file = join(folder(), "ending-later.mjs");
    writeFileSync(file, ENDING);
    const threads = pool(file);
    onTestFinished(() => threads.close());
    const held = new Int32Array(new SharedArrayBuffer(2 * Int32Array.BYTES_PER_ELEMENT));
    const leave = new AbortController();
    const ends = Array.from({ length: threads.count }, () =>
      expect(threads.run("solve", held as never, { signal: leave.signal })).rejects.toThrow(),
    );
    while (Atomics.load(held, 0) < threads.count) await setTimeout(5);
    const waits = threads.run("record", null as never);
    leave.abort();
    await Promise.all(ends);
    expect(await waits).toBe("record");
  });
});

/** Eleven hours of an invented crawler, step by step: seconds of work. */
const LONG_RUN = {
  rotor: { diameter: 0.044, psi: [1.05, -1.5, -32], lambda: [0.022, 1.1], phiMax: 0.16 },
  motor: { kv: 4900, resistance: 0.19, frictionTorque: 6e-4 },
  pack: {
    cell: {
      capacity: 80_000,
      minimumVoltage: 3,
      resistance: 0.026,
      curve: [
        [0, 3],
        [1, 4.18],
      ],
    },
  },
  skirt: { perimeter: 0.36, area: 0.008, gap: 0.0006, land: 0.003, edge: "square" },
  vehicle: { mass: 0.9 },
};

describe("pool, with the worker as it is built", () => {
  let built: Awaited<ReturnType<typeof buildServer>>;
  let threads: Threads;
  beforeAll(async () => {
    built = await buildServer();
    threads = pool(join(built.folder, "worker.js"));
  });
  afterAll(async () => {
    await threads.close();
    rmSync(built.folder, { recursive: true, force: true });
  });

  const asked = (body: object) => ({ path: "/bleed", body: Buffer.from(JSON.stringify(body)) });
  const plate = { holes: [{ diameter: 0.006, thickness: 0.002, count: 4 }], pressure: 180 };

  it("computes as the server's own thread does, to the byte", async () => {
    const answer = await threads.run("compute", asked(plate));
    expect(Buffer.from(answer).toString()).toBe(Buffer.from(done("compute", asked(plate))).toString());
  });

  it("refuses as the server's own thread does: status, code and fields survive the way back", async () => {
    const refused = threads.run("compute", asked({ ...plate, pressure: -1 }));
    await expect(refused).rejects.toBeInstanceOf(Refusal);
    await expect(refused).rejects.toMatchObject({
      status: 400,
      code: "invalid",
      fields: [{ path: "pressure", message: expect.stringContaining("Read -1") }],
    });
    const motor = {
      path: "/fit/motor",
      body: Buffer.from('{"rows":[{"voltage":3,"current":1,"rpm":2000}]}'),
    };
    await expect(threads.run("compute", motor)).rejects.toMatchObject({
      status: 422,
      code: "not-enough-data",
    });
  });

  it("given up by who asked, while it runs or while it waits: rejects, and the next task is done", async () => {
    const run = { path: "/rundown", body: Buffer.from(JSON.stringify(LONG_RUN)) };
    const leave = new AbortController();
    const all = Array.from({ length: 2 * threads.count }, () =>
      threads.run("compute", run, { signal: leave.signal }),
    );
    leave.abort();
    for (const each of await Promise.allSettled(all)) expect(each.status).toBe("rejected");
    await expect(threads.run("compute", asked(plate))).resolves.toBeInstanceOf(Uint8Array);
  });

  it("asked for more than may wait: says that it is too busy, and does what waited", async () => {
    const many = Array.from({ length: 300 }, () => threads.run("compute", asked(plate)));
    const ends = await Promise.allSettled(many);
    const refused = ends.filter((each) => each.status === "rejected");
    expect(refused.length).toBeGreaterThan(0);
    for (const { reason } of refused) expect(reason).toBeInstanceOf(TooBusyError);
    expect(refused.length).toBeLessThanOrEqual(100);
  });
});
