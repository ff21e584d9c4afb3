import { withMass } from "#shared/book/mass/withMass.ts";
import { resolveBuild, solvable } from "#shared/book/resolve.ts";
import { solvePartSwaps } from "#shared/decide/swaps/partSwaps.ts";
import type { SwapAim } from "#shared/decide/swaps/swaps.ts";
import { predictAny } from "#shared/physics/predictAny.ts";
import { demoBook } from "#tests/support/demoBook.ts";
import { PRICES, sixtyLines } from "#tests/support/swapLines.ts";
import { median } from "./timing.ts";

const AIMS: readonly SwapAim[] = ["price", "leadTime", "count"];
/** As Mass asks for them. */
const SETS = 20;
const WAYS = 400;
const RUNS = 5;
const LINES = 200;
const LEDGER_RUNS = 25;
const MILLION = 1e6;

export interface MassTimes {
  /** processor time of the slowest kind of prices and aim, sixty lines of six alternatives, one way to have the parts [s] */
  readonly swaps: number;
  /** the same with the parts to be had in many ways [s] */
  readonly partSwaps: number;
  readonly ways: number;
  /** a ledger of many lines, one of them typed anew, and the model with it, median of processor time [s] */
  readonly ledger: number;
  readonly lines: number;
}

/** Processor time of this thread, so that what else the machine does counts less [s]. */
function processorTime(work: () => unknown): number {
  const start = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(start);
  return (user + system) / MILLION;
}

/** Parts that may be had in some ways, each with an allowed mass of its own; invented. */
function waysFor(total: number, least: number, count: number) {
  return Array.from({ length: count }, (_, i) => {
    const share = 0.3 + (0.4 * ((i * 37) % count)) / count;
    const mass = 200 + ((i * 53) % 100);
    return {
      price: i === 0 ? 0 : (i * 71) % 200,
      leadTime: i === 0 ? 0 : (i * 11) % 30,
      count: i === 0 ? 0 : 1 + (i % 4),
      mass,
      uncertainty: 1,
      allowed: () => mass + least + share * (total - least),
    };
  });
}

function slowest(ways: number): number {
  const times = Object.values(PRICES).flatMap((price) => {
    const lines = sixtyLines(price);
    const total = lines.reduce((sum, { mass }) => sum + mass, 0);
    const least = lines.reduce(
      (sum, { mass, alternatives }) => sum + Math.min(mass, ...alternatives.map((each) => each.mass)),
      0,
    );
    const parts = waysFor(total, least, ways);
    return AIMS.map((by) =>
      median(
        Array.from({ length: RUNS }, () =>
          processorTime(() => solvePartSwaps({ lines, parts, by, solutions: SETS })),
        ),
      ),
    );
  });
  return Math.max(...times);
}

/** The demo's first build with a ledger of many lines, one of which changes from run to run. */
function timedLedger(): number {
  const book = demoBook();
  const build = book.builds[0].data;
  const { mass: _whole, ...vehicle } = build.vehicle;
  const angles = [0, 90, 180, ...build.attitudes.map(({ angle }) => angle)];
  let typed = 0;
  const typedAnew = () => {
    typed += 1;
    const ledger = Array.from({ length: LINES }, (_, i) => ({
      name: `Line ${i}`,
      group: "structure" as const,
      quantity: 1,
      mass: 0.002 + (i === 0 ? typed * 1e-5 : 0),
      basis: "estimated" as const,
      alternatives: [],
    }));
    const changed = withMass(book, { ...build, vehicle, ledger });
    const input = solvable(resolveBuild(book, changed));
    return input && predictAny(input, angles);
  };
  for (let i = 0; i < LEDGER_RUNS; i++) typedAnew();
  return median(Array.from({ length: LEDGER_RUNS }, () => processorTime(typedAnew)));
}

/** Swaps of sixty lines with six alternatives, and a long ledger under a line that is typed. */
export function timedMass(): MassTimes {
  return { swaps: slowest(1), partSwaps: slowest(WAYS), ways: WAYS, ledger: timedLedger(), lines: LINES };
}
