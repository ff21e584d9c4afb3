import { describe, expect, it } from "vitest";
import { Answers } from "#server/jobs/answers.ts";
import { TooManyJobsError, UnknownJobError } from "#server/jobs/errors.ts";
import { Jobs } from "#server/jobs/jobs.ts";
import type { Piece } from "#server/jobs/piece.ts";
import { sealed } from "#server/jobs/question.ts";
import { done } from "#server/threads/tasks.ts";
import type { Threads } from "#server/threads/threads.ts";
import { TooManyCombinationsError } from "#shared/decide/choose/count.ts";
import { steppingClock } from "#tests/server/support/book.ts";
import { chooseQuestion } from "#tests/support/chooseQuestion.ts";

interface Held {
  readonly piece: Piece;
  readonly solve: () => void;
  readonly fail: (error: Error) => void;
}

/** Threads that solve a piece only when they are told to; whatever else they are asked they do at once. */
function heldThreads(count = 1): { threads: Threads; held: Held[]; pieces: Piece[] } {
  const held: Held[] = [];
  const pieces: Piece[] = [];
  const threads: Threads = {
    count,
    run: (name, input) => {
      if (name !== "solve") return Promise.resolve(done(name, input));
      const piece = input as Piece;
      return new Promise((resolve, reject) => {
        pieces.push(piece);
        held.push({ piece, solve: () => resolve(done(name, input)), fail: reject });
      });
    },
    close: () => Promise.resolve(),
  };
  return { threads, held, pieces };
}

const silent = () => undefined;
const soon = () => new Promise((resolve) => setImmediate(resolve));

async function solveAll(held: Held[]): Promise<void> {
  for (let next = held.shift(); next; next = held.shift()) {
    next.solve();
    await soon();
  }
}

/** A question of the demo, as threads hand it to each other. */
function demoQuestion(change: object = {}) {
  const { request, question } = chooseQuestion(change);
  return { request, question: sealed(question) };
}

/** Many combinations of one kind, so that a job takes several pieces. */
const many = (motor: string) =>
  demoQuestion({
    motors: [motor],
    skirts: [{ skirt: "square-lip", gaps: { from: 0.0002, to: 0.0012, step: 0.000005 } }],
  });

describe("Jobs, one question", () => {
  it("solved piece by piece is done, with every combination solved once", async () => {
    const { threads, held, pieces } = heldThreads();
    const jobs = new Jobs(threads, steppingClock(), silent);
    const { request, question } = many("bell-18");
    const { job, known } = jobs.start(request, question);
    expect(known).toBe(false);
    expect(job.report().state).toBe("running");
    await solveAll(held);
    expect(job.report()).toMatchObject({ state: "done", solved: job.count });
    expect(pieces.length).toBeGreaterThan(2);
    const covered = pieces.map(({ from, to }) => [from, to]).sort(([a], [b]) => a - b);
    expect(covered[0][0]).toBe(0);
    covered.slice(1).forEach(([from], i) => {
      expect(from).toBe(covered[i][1]);
    });
    expect(covered[covered.length - 1][1]).toBe(job.count);
  });

  it("asked again with the same numbers is the same job, not solved again", async () => {
    const { threads, held, pieces } = heldThreads();
    const jobs = new Jobs(threads, steppingClock(), silent);
    const first = jobs.start(demoQuestion().request, demoQuestion().question);
    await solveAll(held);
    const before = pieces.length;
    const again = jobs.start(demoQuestion().request, demoQuestion().question);
    expect(again).toEqual({ job: first.job, known: true });
    expect(pieces).toHaveLength(before);
  });

  const SHORT = { sort: "margin", order: "most", only: "all", count: 12, rank: "margin5" } as const;
  const shortlist = (jobs: Jobs, id: string, signal = new AbortController().signal) =>
    jobs.whileKept(id, (job) => new Answers(jobs.threads, job).shortlist(SHORT, signal));

  it("whose shortlist is under way when the server closes is told as gone, a thread that fails by itself as what it is", async () => {
    const { threads, held } = heldThreads();
    const broken: Threads = {
      ...threads,
      run: (name, input) =>
        name === "judge" ? Promise.reject(new Error("Terminating worker thread")) : threads.run(name, input),
    };
    const jobs = new Jobs(broken, steppingClock(), silent);
    const { request, question } = demoQuestion();
    const { job } = jobs.start(request, question);
    await solveAll(held);
    await expect(shortlist(jobs, job.id)).rejects.toThrow("Terminating");
    const asked = shortlist(jobs, job.id);
    await Promise.all([expect(asked).rejects.toThrow(UnknownJobError), jobs.close()]);
  });

  it("whose shortlist nobody waits for any more judges none but those under way", async () => {
    const { threads, held } = heldThreads();
    const leave = new AbortController();
    let judged = 0;
    const counting: Threads = {
      ...threads,
      run: async (name, input) => {
        if (name !== "judge") return threads.run(name, input);
        judged += 1;
        await soon();
        leave.abort();
        throw new Error("its end doesn't matter");
      },
    };
    const jobs = new Jobs(counting, steppingClock(), silent);
    const { request, question } = demoQuestion();
    const { job } = jobs.start(request, question);
    await solveAll(held);
    await expect(shortlist(jobs, job.id, leave.signal)).rejects.toThrow();
    await soon();
    expect(judged).toBeGreaterThan(0);
    expect(judged).toBeLessThan(SHORT.count / 2);
  });

  it("cancelled: a piece that waits for a thread is left unsolved, one before it was solved", () => {
    const { threads, pieces } = heldThreads();
    const jobs = new Jobs(threads, steppingClock(), silent);
    const { request, question } = many("bell-18");
    const { job } = jobs.start(request, question);
    expect(pieces.length).toBeGreaterThan(1);
    expect(done("solve", pieces[0])?.count).toBe(pieces[0].to - pieces[0].from);
    jobs.remove(job.id);
    expect(done("solve", pieces[1])).toBeNull();
  });

  it("read before it is done is refused, with how far it is", () => {
    const { threads } = heldThreads();
    const jobs = new Jobs(threads, steppingClock(), silent);
    const { request, question } = demoQuestion();
    const { job } = jobs.start(request, question);
    expect(() => job.results()).toThrow(/is running; its combinations can be read once it is done/);
  });

  it("cancelled while a piece is under way keeps nothing and asks for no more", async () => {
    const { threads, held, pieces } = heldThreads();
    const jobs = new Jobs(threads, steppingClock(), silent);
    const { request, question } = many("bell-18");
    const { job } = jobs.start(request, question);
    held.shift()?.solve();
    await soon();
    const before = pieces.length;
    jobs.remove(job.id);
    await solveAll(held);
    expect(job.report()).toMatchObject({ state: "cancelled" });
    expect(job.soFar().pieces).toEqual([]);
    expect(pieces).toHaveLength(before);
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
    expect(job.soFar().pieces).toEqual([]);
    expect(logged).toEqual([new Error("out of memory")]);
  });

  it("that failed is solved anew when it is asked again", async () => {
    const { threads, held } = heldThreads();
    const jobs = new Jobs(threads, steppingClock(), silent);
    const { request, question } = demoQuestion();
    held.length = 0;
    jobs.start(request, question);
    for (const each of held.splice(0)) each.fail(new Error("no"));
    await soon();
    const again = jobs.start(request, question);
    expect(again.known).toBe(false);
    await solveAll(held);
    expect(again.job.report().state).toBe("done");
  });

  it("with a hundred million combinations is refused before it is handed to any thread, with the count and how to narrow it", () => {
    const { question } = chooseQuestion({
      rotors: [{ rotor: "swept-nine", diameters: { from: 0.03, to: 0.06, step: 0.00001 } }],
      skirts: [{ skirt: "square-lip", gaps: { from: 0.0001, to: 0.0021, step: 2.5e-7 } }],
    });
    expect(() => sealed(question)).toThrow(TooManyCombinationsError);
    expect(() => sealed(question)).toThrow(/96,0\d\d,\d\d\d combinations.*Narrow/);
  });
});

describe("Jobs, two questions at once on one thread", () => {
  it("take turns: neither waits for the other to end", async () => {
    const { threads, held, pieces } = heldThreads();
    const jobs = new Jobs(threads, steppingClock(), silent);
    const one = many("bell-18");
    const two = many("brushed-20");
    const first = jobs.start(one.request, one.question).job;
    const second = jobs.start(two.request, two.question).job;
    await solveAll(held);
    expect(first.report().state).toBe("done");
    expect(second.report().state).toBe("done");
    const turns = pieces.map(({ question }) => (question.id === first.id ? 1 : 2));
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
    const ask = (margin: number) => demoQuestion({ wants: { targetMargin: margin } });
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
      const { request, question } = demoQuestion({
        rotors: [{ rotor: "straight-seven" }],
        skirts: [{ skirt: "felt-ring" }],
        wants: { targetMargin: 1 + i / 10 },
      });
      ids.push(jobs.start(request, question).job.id);
      await solveAll(held);
    }
    expect(() => jobs.find(ids[0])).toThrow(UnknownJobError);
    expect(jobs.find(ids[25]).report().state).toBe("done");
    expect(jobs.find(ids[2]).results().pieces).toHaveLength(1);
  });
});
