import type { SwapAim, SwapLine, SwapSet, SwapsRequest } from "../../../../shared/decide/swaps/swaps.ts";
import type { Build } from "../../../../shared/model/build.ts";
import type { LedgerLine } from "../../../../shared/model/ledger.ts";
import { type Headroom, tightestFirst } from "../headroom.ts";

/** More sets than are shown: those that only add a needless swap to a better one are left out. */
const SETS_ASKED = 20;

/** A line that may be swapped; where the whole was weighed, its own error is in the whole's, and a swap brings both. */
function swapLine(line: LedgerLine, unsure: number, isOfWhole: boolean): SwapLine {
  const { quantity, mass, alternatives } = line;
  return {
    quantity,
    mass,
    uncertainty: isOfWhole ? 0 : unsure,
    alternatives: alternatives.map((each) => ({
      mass: each.mass,
      price: each.price,
      leadTime: each.leadTime,
      uncertainty: isOfWhole ? Math.hypot(unsure, each.uncertainty ?? 0) : (each.uncertainty ?? 0),
    })),
  };
}

/** What is asked for, and what it is asked of. */
export interface SwapQuestion extends SwapsRequest {
  /** places of the ledger's lines that have alternatives, in the request's order; the last line of the request is all the rest */
  readonly places: readonly number[];
}

/** @returns what to ask: every line with alternatives, all else as one, against the tightest attitude; null where no line has any, or nothing limits the mass */
export function swapQuestion(of: Headroom, build: Build, by: SwapAim): SwapQuestion | null {
  const places = build.ledger.flatMap(({ alternatives }, i) => (alternatives.length > 0 ? [i] : []));
  const [tightest] = tightestFirst(of);
  if (places.length === 0 || !tightest) return null;
  const { ledger } = of;
  const isOfWhole = ledger.whole !== null;
  const unsureOf = (at: number) => ledger.lines.find((line) => line.of === at)?.uncertainty ?? 0;
  const lines = places.map((at) => swapLine(build.ledger[at], unsureOf(at), isOfWhole));
  const swappable = lines.reduce((sum, { quantity, mass }) => sum + quantity * mass, 0);
  const others = ledger.lines.filter((line) => typeof line.of !== "number" || !places.includes(line.of));
  const rest = ledger.mass.value - swappable;
  const restUnsure = ledger.whole
    ? ledger.whole.uncertainty
    : Math.hypot(...others.map((line) => line.quantity * line.uncertainty));
  return {
    // Lines that come to more than the whole leave that much less for all.
    lines: [...lines, { quantity: 1, mass: Math.max(0, rest), uncertainty: restUnsure, alternatives: [] }],
    allowed: Math.max(0, tightest.atTarget - Math.min(0, rest)),
    by,
    solutions: SETS_ASKED,
    places,
  };
}

/** @returns sets without those that only add a needless swap to one before them */
export function withoutNeedless(sets: readonly SwapSet[]): SwapSet[] {
  const adds = (set: SwapSet, to: SwapSet) =>
    to.choices.every((choice, i) => choice === null || choice === set.choices[i]);
  return sets.filter((set, i) => !sets.slice(0, i).some((before) => adds(set, before)));
}

/** Of two lines no two have one name. */
function freeName(name: string, of: LedgerLine, taken: readonly string[]): string {
  return taken.includes(name) ? `${name}, for ${of.name}`.slice(0, 120) : name;
}

/** @returns the build with a set of swaps made: each chosen alternative is its line, and a mass typed for the whole goes with them */
export function swapped(build: Build, { places }: Pick<SwapQuestion, "places">, set: SwapSet): Build {
  const names = build.ledger.map(({ name }) => name);
  const ledger = build.ledger.map((line, at): LedgerLine => {
    const choice = set.choices[places.indexOf(at)] ?? null;
    if (choice === null || !places.includes(at)) return line;
    const { name, mass, uncertainty } = line.alternatives[choice];
    const { uncertainty: _before, ...kept } = line;
    return {
      ...kept,
      name: freeName(name, line, names),
      mass,
      ...(uncertainty === undefined ? {} : { uncertainty }),
      basis: "estimated",
      alternatives: line.alternatives.filter((_, i) => i !== choice),
    };
  });
  const sum = (lines: readonly LedgerLine[]) =>
    lines.reduce((total, { quantity, mass }) => total + quantity * mass, 0);
  const { mass } = build.vehicle;
  if (mass === undefined) return { ...build, ledger };
  return {
    ...build,
    ledger,
    vehicle: { ...build.vehicle, mass: mass + sum(ledger) - sum(build.ledger) },
    uncertainty: { ...build.uncertainty, "vehicle.mass": set.uncertainty },
  };
}
