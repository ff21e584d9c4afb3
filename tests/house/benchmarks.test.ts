import { describe, expect, it } from "vitest";
import { pageOf } from "../benchmarks/page.ts";
import type { Results } from "../benchmarks/parts.ts";
import { rowsOf } from "../benchmarks/rows.ts";
import { tableText } from "../benchmarks/table.ts";

const SUMS = { pressure: 1.1809641484e9, speed: 3.2838988123e9, flow: 7.4499870173e3 };
const CHOSEN = {
  sets: 1e6,
  threads: 2,
  seconds: 0.6,
  bareSeconds: 0.3,
  ratioToBare: 2,
  ratioToSweep: 3,
  meeting: 9,
  nonDominated: 3,
};
const REPEATED = { first: 0.2, median: 0.02, runs: 25 };

const MOVES = {
  moves: 120,
  work: { median: 0.007, p95: 0.015 },
  painted: { median: 0.02, p95: 0.04 },
  processor: 0.01,
};

const READ = { requests: 20, tests: 240, bytes: 6e5, there: 1 };

/** Invented figures: what is written of them is checked, not how fast anything is. */
const RESULTS: Results = {
  machine: { cores: 2, node: "20.0.0", date: "2026-01-01" },
  sweep: {
    solvesPerSecond: 4e6,
    ratioToC: 0.7,
    compiledSolvesPerSecond: 5.7e6,
    sums: SUMS,
    twoThreads: { solvesPerSecond: 7e6, sums: SUMS },
  },
  choose: { ...CHOSEN, oneThread: CHOSEN, scaling: [{ sets: 10_000, setsPerSecond: 1e6 }] },
  chooseGiving: { sets: 10_000, points: 36, overPoints: 2, overOne: 90 },
  map: {
    points: 40_000,
    drawn: { ducted: { median: 0.02, p95: 0.04 }, open: { median: 0.02, p95: 0.04 } },
    chance: {
      ducted: { nodes: { dragged: 0.09, settled: 0.5 }, field: 0.03 },
      open: { nodes: { dragged: 0.04, settled: 0.2 }, field: 0.03 },
    },
  },
  chooseJob: { sets: 1e6, threads: 2, seconds: 1, peakMemory: 250 },
  chooseServer: {
    sets: 1e6,
    seconds: 1,
    firstMark: 0.1,
    marks: 9,
    progressGap: 0.15,
    cancelTold: 0.01,
    cancelFree: 0.1,
    cancelFreeMedian: 0.1,
    smallAlone: 0.05,
  },
  monteCarlo: { ...REPEATED, samples: 2048, attitudes: 4, uncertain: 8, overMass: 1.5, giving: 0.05 },
  fit: { ...REPEATED, points: 5000, degree: 2 },
  costs: { withoutEach: 2, suctions: 0.5, offsets: 20 },
  mass: { swaps: 0.1, partSwaps: 0.4, ways: 400, ledger: 0.004, lines: 200 },
  screen: {
    drag: { curves: 8, readings: 1900, ...MOVES },
    firstLoad: { script: 190, scriptFiles: 40, workers: 90, plain: 0 },
    felt: {
      arrival: { verdict: 0.9, whole: 2.4, held: 0.09 },
      slowArrival: { verdict: 1.9, whole: 6, held: 0.4 },
      change: { views: 12, first: { name: "Curves", time: 0.3 }, again: { name: "Choose", time: 0.09 } },
      slowDrag: MOVES,
      slower: 4,
    },
    missing: null,
  },
  serverReady: { first: 0.4, again: 0.3 },
  holdUps: {
    requests: [{ name: "archive of the book", took: 0.2, asked: 20, p95: 0.01, slowest: 0.02 }],
    worst: 0.01,
  },
  load: {
    readers: 100,
    writers: 10,
    seconds: 30,
    streams: 500,
    requestsPerSecond: 2000,
    processor: 0.0004,
    reads: 0.09,
    writes: 0.14,
    list: 0.002,
    listBesideSearch: 0.003,
    streamsKeep: { rounds: 5, memory: 1, handles: 0 },
  },
  listPage: {
    stored: 100_000,
    slowest: 0.01,
    start: 0.6,
    pages: {
      newest: 0.01,
      full: 0.01,
      byKind: 0.01,
      byKindAndRotor: 0.01,
      byWordInAll: 0.01,
      byWordInOne: 0.01,
      builds: 0.01,
      states: 0.01,
    },
  },
  longStart: {
    stored: 100_000,
    match: READ,
    bench: READ,
    overAll: { parts: READ, curves: READ },
    demoMatch: READ,
    demoBench: READ,
  },
  archive: {
    size: 100,
    out: { seconds: 3, processor: 3, memory: 50 },
    in: { seconds: 20, processor: 20, memory: 90 },
  },
};

const verdictOf = (results: Results, what: RegExp) =>
  rowsOf(results).find((row) => what.test(row.what))?.kept;

describe("the table of benchmarks", () => {
  it("says kept of every budget, with every figure within its own", () => {
    const judged = rowsOf(RESULTS).filter(({ budget }) => budget !== "");
    expect(judged.map(({ what, kept }) => [what, kept])).toEqual(judged.map(({ what }) => [what, true]));
  });

  it("says missed, with a figure beyond its budget or a sum that is off by more than 1e-9", () => {
    const slow = { ...RESULTS, monteCarlo: { ...RESULTS.monteCarlo, median: 0.061 } };
    expect(verdictOf(slow, /Monte Carlo.*median/)).toBe(false);
    const sums = { ...SUMS, flow: SUMS.flow * (1 + 2e-9) };
    expect(verdictOf({ ...RESULTS, sweep: { ...RESULTS.sweep, sums } }, /sums/)).toBe(false);
    const { felt } = RESULTS.screen;
    const late = felt && { ...felt, arrival: { ...felt.arrival, verdict: 1.01 } };
    expect(verdictOf({ ...RESULTS, screen: { ...RESULTS.screen, felt: late } }, /first verdict/)).toBe(false);
    const slower = { ...RESULTS, sweep: { ...RESULTS.sweep, ratioToC: 0.49 } };
    expect(verdictOf(slower, /ratio to C/)).toBe(false);
  });

  it("says that no compiler or browser was found, with none on the machine, and judges nothing by it", () => {
    const sweep = { ...RESULTS.sweep, ratioToC: null, compiledSolvesPerSecond: null };
    const screen = { drag: null, firstLoad: null, felt: null, missing: "none installed" };
    const text = tableText(rowsOf({ ...RESULTS, sweep, screen }));
    expect(text).toMatch(/ratio to C.*no C compiler found.*not measured/);
    expect(text).toMatch(/handle dragged.*no Chromium/);
  });

  it("stands on its page with the machine's cores, Node and day, and no other word of the machine", () => {
    const page = pageOf(RESULTS, rowsOf(RESULTS));
    expect(page).toContain("This run: 2026-01-01, 2 cores, Node 20.0.0.");
    expect(page).toMatch(/\| ratio to C, one core \| 0\.70 × \| ≥ 0\.5 × \| kept \|/);
    expect(page).not.toMatch(/(^|[\s`"(])\/(home|root|tmp|work|Users)\b/m);
  });
});
