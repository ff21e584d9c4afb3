import { describe, expect, it } from "vitest";
import { TooManyJobsError, UnknownJobError } from "#server/jobs/errors.ts";
import { Jobs } from "#server/jobs/jobs.ts";
import type { Piece } from "#server/jobs/piece.ts";
import { done } from "#server/threads/tasks.ts";
import type { Threads } from "#server/threads/threads.ts";
import { TooManySetsError } from "#shared/decide/choose/count.ts";
import { steppingClock } from "#tests/server/support/book.ts";
import { chooseQuestion } from "#tests/support/chooseQuestion.ts";

interface Held {
  readonly piece: Piece;
  readonly solve: () => void;
  readonly fail: (error: Error) => void;
}

/** Threads that solve a piece only when they are told to; whatever else they are asked they do at once. */
function heldThreads(count = 1): { threads: Threads; held: Held[]; asked: Piece[] } {
  const held: Held[] = [];
  const asked: Piece[] = [];
  const threads: Threads = {
    count,
    run: (name, input) => {
      if (name !== "solve") return Promise.resolve(done(name, input));
      const piece = input as Piece;
      return new Promise((resolve, reject) => {
        asked.push(piece);
        held.push({ piece, solve: () => resolve(done(name, input)), fail: reject });
      });
    },
    close: () => Promise.resolve(),
  };
  return { threads, held, asked };
}

const silent = () => undefined;
const soon = () => new Promise((resolve) => setImmediate(resolve));

async function solveAll(held: Held[]): Promise<void> {
  for (let next = held.shift(); next; next = held.shift()) {
    next.solve();
    await soon();
  }
}

/** Many sets of one kind, so that a job takes several pieces. */
const many = (motor: string) =>
  chooseQuestion({
    motors: [motor],
    skirts: [{ skirt: "square-lip", gaps: { from: 0.0002, to: 0.0012, step: 0.000005 } }],
  });

describe("Jobs, one question", () => {
  it("solved piece by piece is done, with every set solved once", async () => {
    const { threads, held, asked } = heldThreads();
    const jobs = new Jobs(threads, steppingClock(), silent);
    const { request, question } = many("bell-18");
    const { job, known } = jobs.start(request, question);
    expect(known).toBe(false);
    expect(job.report().state).toBe("running");
    await solveAll(held);
    expect(job.report()).toMatchObject({ state: "done", solved: job.sets });
    expect(asked.length).toBeGreaterThan(2);
    const covered = asked.map(({ from, to }) => [from, to]).sort(([a], [b]) => a - b);
    expect(covered[0][0]).toBe(0);
    covered.slice(1).forEach(([from], i) => {
      expect(from).toBe(covered[i][1]);
    });
    expect(covered[covered.length - 1][1]).toBe(job.sets);
  });

  it("asked again with the same numbers is the same job, not solved again", async () => {
    const { threads, held, asked } = heldThreads();
    const jobs = new Jobs(threads, steppingClock(), silent);
    const first = jobs.start(chooseQuestion().request, chooseQuestion().question);
    await solveAll(held);
    const pieces = asked.length;
    const again = jobs.start(chooseQuestion().request, chooseQuestion().question);
    expect(again).toEqual({ job: first.job, known: true });
    expect(asked).toHaveLength(pieces);
  });

  it("whose shortlist is under way when the server closes is told as gone, a thread that fails by itself as what it is", async () => {
    const { threads, held } = heldThreads();
    const broken: Threads = {
      ...threads,
      run: (name, input) =>
        name === "doubt" ? Promise.reject(new Error("Terminating worker thread")) : threads.run(name, input),
    };
    const jobs = new Jobs(broken, steppingClock(), silent);
    const { job } = jobs.start(chooseQuestion().request, chooseQuestion().question);
    await solveAll(held);
    const query = { sort: "margin", order: "most", only: "all", count: 1, rank: "margin5" } as const;
    await expect(jobs.shortlist(job.id, query)).rejects.toThrow("Terminating");
    const asked = jobs.shortlist(job.id, query);
    await Promise.all([expect(asked).rejects.toThrow(UnknownJobError), jobs.close()]);
  });

  it("cancelled while a piece is under way keeps nothing and asks for no more", async () => {
    const { threads, held, asked } = heldThreads();
    const jobs = new Jobs(threads, steppingClock(), silent);
    const { request, question } = many("bell-18");
    const { job } = jobs.start(request, question);
    held.shift()?.solve();
    await soon();
    const pieces = asked.length;
    jobs.remove(job.id);
    await solveAll(held);
    expect(job.report()).toMatchObject({ state: "cancelled" });
    expect(job.results()).toEqual([]);
    expect(asked).toHaveLength(pieces);
    expect(() => jobs.find(job.id)).toThrow(UnknownJobError);
  });

  it("that fails keeps nothing, says so, and its cause is logged", async () => {
    const { threads, held } = heldThreads();
    const logged: unknown[] = [];
    const jobs = new Jobs(threads, steppingClock(), (error) => logged.push(error));
    const { request, question } = many("bell-18");
    const { job } = jobs.start(request, question);
    held.shift()?.fail(new Error("out of memory"));
    await soon();
    await solveAll(held);
    expect(job.report()).toMatchObject({ state: "failed", error: expect.stringContaining("server's log") });
    expect(job.results()).toEqual([]);
    expect(logged).toEqual([new Error("out of memory")]);
  });

  it("that failed is solved anew when it is asked again", async () => {
    const { threads, held } = heldThreads();
    const jobs = new Jobs(threads, steppingClock(), silent);
    const { request, question } = chooseQuestion();
    held.length = 0;
    jobs.start(request, question);
    for (const each of held.splice(0)) each.fail(new Error("no"));
    await soon();
    const again = jobs.start(request, question);
    expect(again.known).toBe(false);
    await solveAll(held);
    expect(again.job.report().state).toBe("done");
  });

  it("with a billion sets is refused before any work, with the count and how to narrow it", () => {
    const { threads, asked } = heldThreads();
    const jobs = new Jobs(threads, steppingClock(), silent);
    const { request, question } = chooseQuestion({
      rotors: [{ rotor: "swept-nine", diameters: { from: 0.03, to: 0.06, step: 0.00001 } }],
      skirts: [{ skirt: "square-lip", gaps: { from: 0.0001, to: 0.0021, step: 2.5e-7 } }],
    });
    expect(() => jobs.start(request, question)).toThrow(TooManySetsError);
    expect(() => jobs.start(request, question)).toThrow(/96,0\d\d,\d\d\d sets.*Narrow/);
    expect(asked).toHaveLength(0);
  });
});

describe("Jobs, two questions at once on one thread", () => {
  it("take turns: neither waits for the other to end", async () => {
    const { threads, held, asked } = heldThreads();
    const jobs = new Jobs(threads, steppingClock(), silent);
    const one = many("bell-18");
    const two = many("brushed-20");
    const first = jobs.start(one.request, one.question).job;
    const second = jobs.start(two.request, two.question).job;
    await solveAll(held);
    expect(first.report().state).toBe("done");
    expect(second.report().state).toBe("done");
    const turns = asked.map(({ key }) => (key === first.id ? 1 : 2));
    const begun = turns.indexOf(2);
    expect(begun).toBeLessThan(4);
    // From where both are open to where one is out of pieces, no job has more than two turns in a row.
    const both = turns.slice(begun, Math.min(turns.lastIndexOf(1), turns.lastIndexOf(2)) + 1).join("");
    expect(both).not.toMatch(/111|222/);
  });
});

describe("Jobs, more than are kept", () => {
  it("refuses a ninth open question", () => {
    const { threads } = heldThreads();
    const jobs = new Jobs(threads, steppingClock(), silent);
    const ask = (margin: number) => chooseQuestion({ wants: { targetMargin: margin } });
    for (let i = 0; i < 8; i++) {
      const { request, question } = ask(1 + i / 10);
      jobs.start(request, question);
    }
    const { request, question } = ask(3);
    expect(() => jobs.start(request, question)).toThrow(TooManyJobsError);
  });

  it("lets the oldest of many ended ones go, never the newest", async () => {
    const { threads, held } = heldThreads();
    const jobs = new Jobs(threads, steppingClock(), silent);
    const ids: string[] = [];
    for (let i = 0; i < 26; i++) {
      const { request, question } = chooseQuestion({
        rotors: [{ rotor: "straight-seven" }],
        skirts: [{ skirt: "felt-ring" }],
        wants: { targetMargin: 1 + i / 10 },
      });
      ids.push(jobs.start(request, question).job.id);
      await solveAll(held);
    }
    expect(() => jobs.find(ids[0])).toThrow(UnknownJobError);
    expect(jobs.find(ids[25]).report().state).toBe("done");
    expect(jobs.find(ids[2]).results()).toHaveLength(1);
  });
});
