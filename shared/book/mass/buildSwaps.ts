import { allowedMasses } from "../../decide/allowedMass.ts";
import {
  type PartChoice,
  type PartSwapSet,
  type PartSwaps,
  solvePartSwaps,
} from "../../decide/swaps/partSwaps.ts";
import type { SwapAim, SwapLine } from "../../decide/swaps/swaps.ts";
import type { Wanted } from "../../decide/wanted.ts";
import type { Build } from "../../model/build.ts";
import type { LedgerLine } from "../../model/ledger.ts";
import { answerOrNull, NotEnoughDataError } from "../../numeric/errors.ts";
import { namedAttitudes } from "../attitudes.ts";
import type { Book } from "../book.ts";
import { resolveBuild, solvable } from "../resolve.ts";
import { costOf, type Exchange, exchangedParts, waysToHaveParts, withExchange } from "./exchange.ts";
import { ledgerOf, pieceMass } from "./ledger.ts";

/** Best sets of swaps of a stored build. */
export interface BuildSwaps extends PartSwaps {
  /** places of the ledger's lines that have alternatives, in the order of the sets' choices */
  readonly places: readonly number[];
  /** the ways to have the parts; those that can't be answered for left out */
  readonly ways: readonly Exchange[];
  /** parts that are left out because no record or test has weighed them, by name */
  readonly notWeighed: readonly string[];
}

/** More ways than these take too long to be waited for. Judgement. */
const MOST_WAYS = 4000;
/** As heavy as anything is asked for [kg]. */
const ANY_MASS = 1e6;

/** A line that may be swapped; where the whole was weighed, its own error is in the whole's, and a swap brings both. */
function swapLine(line: LedgerLine, unsure: number, isOfWhole: boolean): SwapLine {
  const { quantity, alternatives } = line;
  return {
    quantity,
    mass: pieceMass(line),
    uncertainty: isOfWhole ? 0 : unsure,
    alternatives: alternatives.map((each) => ({
      mass: each.mass,
      price: each.price,
      leadTime: each.leadTime,
      uncertainty: isOfWhole ? Math.hypot(unsure, each.uncertainty ?? 0) : (each.uncertainty ?? 0),
    })),
  };
}

/** The mass at which the tightest attitude just has the wanted margin; 0 where there is no answer [kg]. */
function tightestAllowed(book: Book, build: Build): number {
  const attitudes = [...namedAttitudes(build).map(({ angle }) => angle), "worst" as const];
  const wanted = attitudes.map((attitude): Wanted => ({ attitude, mode: "driving" }));
  const masses = answerOrNull(() => {
    const input = solvable(resolveBuild(book, build));
    return input && allowedMasses(input, wanted, [build.targetMargin]);
  });
  return masses ? Math.min(ANY_MASS, ...masses.flat().map((mass) => mass ?? ANY_MASS)) : 0;
}

/** What a way to have the parts weighs without the lines that may be swapped, and what it may weigh. */
function choiceOf(book: Book, build: Build, exchange: Exchange, places: readonly number[]): PartChoice {
  const changed = withExchange(book, build, exchange);
  const ledger = ledgerOf(book, changed);
  const isPlace = (of: unknown) => typeof of === "number" && places.includes(of);
  const swappable = ledger.lines.filter(({ of }) => isPlace(of));
  const others = ledger.lines.filter(({ of }) => !isPlace(of));
  return {
    ...costOf(book, exchange),
    mass: ledger.mass.value - swappable.reduce((sum, { quantity, mass }) => sum + quantity * mass, 0),
    uncertainty: ledger.whole
      ? ledger.whole.uncertainty
      : Math.hypot(...others.map((line) => line.quantity * line.uncertainty)),
    allowed: () => tightestAllowed(book, changed),
  };
}

/** Parts without a mass, of those that an exchange brings or takes. */
function unweighed(book: Book, build: Build, exchange: Exchange): string[] {
  const parts = exchangedParts(exchange);
  return [build, { ...build, ...exchange }].flatMap((of) =>
    ledgerOf(book, of)
      .lines.filter((line) => line.basis === "missing" && parts.some((part) => part === line.of))
      .map(({ name }) => name),
  );
}

/**
 * The best swaps of a stored build: of its ledger's lines, and of its parts for others of the book, each with its own curve.
 *
 *     every way to have the parts, with the allowed mass that the full model gives it
 *
 * @param book - of its parts and their tests
 * @param build - a stored build, or one changed by what-if settings
 * @param by - what to have least of
 * @param solutions - how many sets, best first [-]
 * @returns the sets [kg, days, -], with what their choices stand for; null where nothing may be swapped
 * @throws {NotEnoughDataError} where there are more ways to have the parts than can be tried
 * @throws {NoConvergenceError} as {@link solvePartSwaps}
 *
 * Valid for alternatives that leave the centre of gravity. Source: docs/method/mass.md, Swaps
 */
export function swapsOfBuild(book: Book, build: Build, by: SwapAim, solutions: number): BuildSwaps | null {
  const places = build.ledger.flatMap(({ alternatives }, i) => (alternatives.length > 0 ? [i] : []));
  const all = waysToHaveParts(book, build);
  if (places.length === 0 && all.length === 1) return null;
  if (all.length > MOST_WAYS)
    throw new NotEnoughDataError(`The parts can be had in ${all.length} ways.`, "Leave out parts to try.");
  const lacking = all.map((way) => unweighed(book, build, way));
  const ways = all.filter((_, i) => lacking[i].length === 0);
  const { lines: own, whole } = ledgerOf(book, build);
  const unsureOf = (at: number) => own.find((line) => line.of === at)?.uncertainty ?? 0;
  const swaps = solvePartSwaps({
    lines: places.map((at) => swapLine(build.ledger[at], unsureOf(at), whole !== null)),
    parts: ways.map((way) => choiceOf(book, build, way, places)),
    by,
    solutions,
  });
  return { ...swaps, places, ways, notWeighed: [...new Set(lacking.flat())] };
}

/** Of two lines no two have one name. */
function freeName(name: string, of: LedgerLine, taken: readonly string[]): string {
  return taken.includes(name) ? `${name}, for ${of.name}`.slice(0, 120) : name;
}

function swappedLines(
  { ledger }: Build,
  places: readonly number[],
  choices: PartSwapSet["choices"],
): LedgerLine[] {
  const names = ledger.map(({ name }) => name);
  return ledger.map((line, at): LedgerLine => {
    const choice = choices[places.indexOf(at)] ?? null;
    if (choice === null || !places.includes(at)) return line;
    const { name, mass, uncertainty } = line.alternatives[choice];
    const { uncertainty: _before, made: _drawn, ...kept } = line;
    return {
      ...kept,
      name: freeName(name, line, names),
      mass,
      ...(uncertainty === undefined ? {} : { uncertainty }),
      basis: "estimated",
      alternatives: line.alternatives.filter((_, i) => i !== choice),
    };
  });
}

/** @returns the build with a set of swaps made: other parts, each chosen alternative its line, and a mass typed for the whole with them */
export function swapped(
  book: Book,
  build: Build,
  { places, ways }: Pick<BuildSwaps, "places" | "ways">,
  set: PartSwapSet,
): Build {
  const changed = withExchange(book, build, ways[set.parts]);
  const ledger = swappedLines(build, places, set.choices);
  const sum = (lines: readonly LedgerLine[]) =>
    lines.reduce((total, line) => total + line.quantity * pieceMass(line), 0);
  const { mass } = changed.vehicle;
  if (mass === undefined) return { ...changed, ledger };
  return {
    ...changed,
    ledger,
    vehicle: { ...changed.vehicle, mass: mass + sum(ledger) - sum(build.ledger) },
    uncertainty: { ...changed.uncertainty, "vehicle.mass": set.uncertainty },
  };
}
