import { CLOSENESS } from "#client/views/map/chance/question.ts";
import type { Passed } from "./archiveBench.ts";
import type { ChanceTimes } from "./mapBench.ts";
import type { Results } from "./parts.ts";
import { atMost, megabytes, millions, ms, type Row, s, times, told } from "./row.ts";
import { screenRows } from "./screenRows.ts";
import type { SweepSums } from "./sweepCases.ts";

const NO_COMPILER = "no C compiler found";
/** Sums of the sweep as converged outside this project: Σ Δp [Pa], Σ ω [rad/s], Σ Q [m³/s]. */
const CONVERGED: SweepSums = { pressure: 1.1809641484e9, speed: 3.2838988123e9, flow: 7.4499870173e3 };
const SUMS_AGREE = 1e-9;

function largestMiss(sums: SweepSums): number {
  const keys = ["pressure", "speed", "flow"] as const;
  return Math.max(...keys.map((key) => Math.abs(sums[key] / CONVERGED[key] - 1)));
}

function sweepRows({ sweep }: Results): Row[] {
  const { solvesPerSecond, ratioToC, compiledSolvesPerSecond, sums, twoThreads } = sweep;
  const miss = Math.max(largestMiss(sums), largestMiss(twoThreads.sums));
  return [
    told("operating points solved, one core", millions(solvesPerSecond)),
    told(
      "the same loop in C at -O2, one core",
      compiledSolvesPerSecond === null ? NO_COMPILER : millions(compiledSolvesPerSecond),
    ),
    {
      what: "ratio to C, one core",
      measured: ratioToC === null ? NO_COMPILER : times(ratioToC),
      budget: "≥ 0.5 ×",
      kept: ratioToC === null ? null : ratioToC >= 0.5,
    },
    told("operating points solved, two threads", millions(twoThreads.solvesPerSecond)),
    {
      what: "largest relative miss of the three sums",
      measured: miss.toExponential(1),
      budget: `≤ ${SUMS_AGREE}`,
      kept: miss <= SUMS_AGREE,
    },
  ];
}

function chooseRows({ choose, chooseGiving, chooseJob, chooseServer }: Results): Row[] {
  return [
    told("a million combinations chosen from, two threads", s(choose.seconds)),
    told("the same million solved and no more, two threads", s(choose.bareSeconds)),
    atMost("choosing over bare solves, two threads", choose.ratioToBare, 3, times),
    told("choosing over the sweep's own solves, two threads", times(choose.ratioToSweep)),
    told("a million combinations chosen from, one thread", s(choose.oneThread.seconds)),
    told("choosing over bare solves, one thread", times(choose.oneThread.ratioToBare)),
    ...choose.scaling.map(({ sets, setsPerSecond }) =>
      told(
        `choosing from ${sets.toLocaleString("en").replaceAll(",", " ")} combinations`,
        millions(setsPerSecond),
      ),
    ),
    atMost(
      `search over joints on gear that gives, over bare solves at each of the ${chooseGiving.points} gaps of a combination`,
      chooseGiving.overPoints,
      3.5,
      times,
    ),
    told("the same over one bare solve a combination", times(chooseGiving.overOne)),
    told(`a million combinations as a job of the server, ${chooseJob.threads} threads`, s(chooseJob.seconds)),
    atMost(
      "memory of that job at its peak, beyond the book and the question",
      chooseJob.peakMemory,
      300,
      megabytes,
    ),
    told("question asked of a server just started, until its stream speaks", ms(chooseServer.firstMark)),
    atMost("longest time between two events of its stream", chooseServer.progressGap, 0.2, ms),
    atMost("cancelled: until it is told, slowest of five", chooseServer.cancelTold, 0.2, ms),
    atMost(
      "cancelled: until another question is answered whole, slowest of five",
      chooseServer.cancelFree,
      0.2,
      ms,
    ),
  ];
}

function costRows({ costs }: Results): Row[] {
  return [
    atMost("gap without each of 36 pulls in turn, over one calibration", costs.withoutEach, 3, times),
    atMost("suctions of a curve that dips, over solving every gap", costs.suctions, 2 / 3, times),
    atMost("a round of offsets of 160 tests, over one of 20", costs.offsets, 50, times),
  ];
}

/** The chance has no budget of its own: it is sampled in a thread, and the field that stands is drawn from what was sampled last. */
function chanceRows(what: string, { nodes, field }: ChanceTimes): Row[] {
  const { dragged, settled } = CLOSENESS;
  const sampled = ({ places, samples }: typeof dragged) =>
    `${places} × ${places} places, ${samples} samples each`;
  return [
    told(
      `chance of holding over it, ${what}: ${sampled(dragged)}, as a drag does, median`,
      ms(nodes.dragged),
    ),
    told(`the same, ${sampled(settled)}, once nothing moves`, ms(nodes.settled)),
    told("the same, carried to every point of the map", ms(field)),
  ];
}

function mapRows({ map: { points, drawn, chance } }: Results): Row[] {
  const what = `map of ${points.toLocaleString("en").replaceAll(",", " ")} points, two threads`;
  return [
    atMost(`${what}, rotor in a duct: a drag's redraw, median`, drawn.ducted.median, 0.033, ms),
    atMost("the same, 95th percentile", drawn.ducted.p95, 0.066, ms),
    atMost(`${what}, open propeller: a drag's redraw, median`, drawn.open.median, 0.033, ms),
    atMost("the same, 95th percentile", drawn.open.p95, 0.066, ms),
    ...chanceRows("rotor in a duct", chance.ducted),
    ...chanceRows("open propeller", chance.open),
  ];
}

function otherRows({ monteCarlo, fit, serverReady, listPage }: Results): Row[] {
  const doubt = `Monte Carlo, ${monteCarlo.samples} samples × ${monteCarlo.attitudes} attitudes`;
  return [
    atMost(`${doubt}, median`, monteCarlo.median, 0.06, ms),
    told(`${doubt}, first in its process`, ms(monteCarlo.first)),
    told(
      `its ${monteCarlo.uncertain} uncertain numbers and causes over one alone`,
      times(monteCarlo.overMass),
    ),
    atMost("the same of a build whose gap gives under load, median", monteCarlo.giving, 0.09, ms),
    atMost(`fit of ${fit.points} points, median`, fit.median, 0.03, ms),
    told(`fit of ${fit.points} points, first in its process`, ms(fit.first)),
    atMost("server ready, first start with the demo", serverReady.first, 1, s),
    atMost("server ready, started again", serverReady.again, 1, s),
    atMost(
      `server ready on ${listPage.stored} tests, 1000 builds, 10 000 earlier states`,
      listPage.start,
      2,
      s,
    ),
    ...Object.entries(listPage.pages).map(([page, seconds]) =>
      atMost(`list page of ${listPage.stored} tests, ${LISTED[page] ?? page}`, seconds, 0.02, ms),
    ),
  ];
}

const kilobytes = (bytes: number) => `${Math.round(bytes / 1000)} kB`;
const count = (value: number) => String(value);

/** Views that go over all parts. */
const NAMED = { parts: "the list of all parts", curves: "Curves" } as const;

/** A first verdict, and a first list, on a book of very many tests. */
function longRows({ longStart: { stored, match, bench, overAll, demoMatch, demoBench } }: Results): Row[] {
  const opened = `opened with ${stored} tests stored`;
  return [
    atMost(`tests that Match reads, ${opened}`, match.tests, 400, count),
    told("requests for them and the rest of the book", count(match.requests)),
    told("their answers, as JSON", kilobytes(match.bytes)),
    atMost(
      `verdict of Match over that on the demo alone, ${opened}`,
      match.there / demoMatch.there,
      3,
      times,
    ),
    atMost(`tests that the Bench reads, ${opened}`, bench.tests, 400, count),
    atMost(
      `list of the Bench over that on the demo alone, ${opened}`,
      bench.there / demoBench.there,
      3,
      times,
    ),
    ...Object.entries(overAll).flatMap(([view, { tests, bytes, there }]) => [
      atMost(`tests that ${NAMED[view as keyof typeof overAll]} reads, ${opened}`, tests, 2_500, count),
      told("all that was read, as JSON, and until it is there", `${kilobytes(bytes)}, ${s(there)}`),
    ]),
  ];
}

function massRows({ mass: { swaps, partSwaps, ways, ledger, lines } }: Results): Row[] {
  const asked = "swaps of 60 lines with 6 alternatives, slowest kind of prices and aim, processor time";
  return [
    atMost(asked, swaps, 1, s),
    atMost(`the same with the parts to be had in ${ways} ways`, partSwaps, 1, s),
    atMost(`a line of a ledger of ${lines} typed: ledger and model, processor time`, ledger, 0.008, ms),
  ];
}

function serverRows({ holdUps, load }: Results): Row[] {
  const crowd = `${load.readers} clients reading, ${load.writers} writing, ${load.seconds} s`;
  return [
    ...holdUps.requests.map(({ name, took, p95 }) =>
      atMost(`GET /bench during ${name} (${s(took)}), 95th percentile`, p95, 0.1, ms),
    ),
    told(`${crowd}: answered`, `${Math.round(load.requestsPerSecond)}/s`),
    ...(load.processor === null
      ? []
      : [told(`${crowd}: processor time of the server for a request`, ms(load.processor))]),
    atMost(`${crowd}: reads, 99th percentile`, load.reads, 0.1, ms),
    atMost(`${crowd}: writes, 99th percentile`, load.writes, 0.15, ms),
    told("list page of the demo's tests, alone", ms(load.list)),
    atMost("the same while a million combinations are searched", load.listBesideSearch / load.list, 2, times),
    ...streamRows(load),
  ];
}

function streamRows({ streams, streamsKeep }: Results["load"]): Row[] {
  const { rounds, memory, handles } = streamsKeep;
  const left = `of ${streams} event streams opened and left ${rounds} times`;
  return [
    atMost(`memory kept ${left}`, memory, 5, (value) => `${value.toFixed(2)} MB`),
    handles === null
      ? told(`connections kept ${left}`, "not known here")
      : atMost(`connections kept ${left}`, handles, 0, (count) => String(count)),
  ];
}

function archiveRows({ archive }: Results): Row[] {
  const whole = `archive of a book of many years, ${megabytes(archive.size)}`;
  const memory = (what: string, held: number | null) =>
    held === null
      ? told(`memory for it, ${what}`, "not known here")
      : atMost(`memory for it beyond the server's at rest, ${what}`, held, 150, megabytes);
  const took = ({ seconds, processor }: Passed) =>
    processor === null ? s(seconds) : `${s(seconds)}, ${s(processor)} of processor`;
  return [
    told(`${whole}: out`, took(archive.out)),
    memory("out", archive.out.memory),
    told(`${whole}: taken in`, took(archive.in)),
    memory("taken in", archive.in.memory),
  ];
}

const LISTED: Readonly<Record<string, string>> = {
  newest: "the newest 100",
  full: "500 on a page",
  byKind: "by kind",
  byKindAndRotor: "by kind and rotor",
  byWordInAll: "a word in every title",
  byWordInOne: "a word in one title",
  builds: "100 of its 1000 builds",
  states: "the states of one of them",
};

/** @returns the table's lines: what was measured, the budget, and whether it was kept */
export function rowsOf(results: Results): Row[] {
  return [
    ...sweepRows(results),
    ...chooseRows(results),
    ...otherRows(results),
    ...longRows(results),
    ...costRows(results),
    ...massRows(results),
    ...mapRows(results),
    ...serverRows(results),
    ...archiveRows(results),
    ...screenRows(results.screen),
  ];
}
