import type { Build } from "../../model/build.ts";
import { type Book, findById } from "../book.ts";
import { nearestSize } from "../rotorSize.ts";
import { ledgerOf, type PartLine } from "./ledger.ts";

/** Parts of the book in the place of a build's own; one that isn't named stays. */
export type Exchange = Partial<Pick<Build, "rotor" | "diameter" | "motor" | "pack" | "skirt">>;

/** What an exchange costs. */
export interface ExchangeCost {
  /** of the parts that are exchanged; a part without a price counts as nothing [any currency] */
  readonly price: number;
  /** until the last of them is there [days] */
  readonly leadTime: number;
  /** parts exchanged [-] */
  readonly count: number;
}

const SAME_DIAMETER = 1e-9;

/** By part, the build's own first: what it may be. */
function choicesOf({ exchanges, ...own }: Build): Exchange[][] {
  const others = (part: "motor" | "pack" | "skirt", ids: readonly (string | null)[]) => [
    {},
    ...ids.filter((id) => id !== own[part]).map((id) => ({ [part]: id })),
  ];
  const rotors = exchanges.rotors.filter(
    ({ rotor, diameter }) =>
      rotor !== own.rotor || Math.abs(diameter - own.diameter) > SAME_DIAMETER * diameter,
  );
  return [
    others("motor", exchanges.motors),
    [{}, ...rotors],
    others("pack", exchanges.packs),
    others("skirt", exchanges.skirts),
  ];
}

/** Only an open propeller presses a vehicle on without a skirt. */
const canBe = (book: Book, { rotor, skirt }: Pick<Build, "rotor" | "skirt">): boolean =>
  skirt !== null || findById(book.rotors, rotor)?.data.kind !== "ducted";

/** @returns every way to have a build's parts with those that it may exchange, its own first; a rotor in a duct never without a skirt */
export function waysToHaveParts(book: Book, build: Build): Exchange[] {
  const [own, ...others] = choicesOf(build).reduce<Exchange[]>(
    (ways, choices) => ways.flatMap((way) => choices.map((choice) => ({ ...way, ...choice }))),
    [{}],
  );
  return [own, ...others.filter((way) => canBe(book, { ...build, ...way }))];
}

/** @returns every exchange of one part alone */
export const singleExchanges = (build: Build): Exchange[] =>
  choicesOf(build).flatMap(([_own, ...others]) => others);

/** @returns which parts an exchange names */
export const exchangedParts = (exchange: Exchange): PartLine[] =>
  (["rotor", "motor", "pack", "skirt"] as const).filter((part) => exchange[part] !== undefined);

/** What a part's record says of buying it. */
function offerOf(book: Book, exchange: Exchange, part: PartLine) {
  const rotor = findById(book.rotors, exchange.rotor)?.data;
  switch (part) {
    case "rotor":
      return rotor && exchange.diameter !== undefined ? nearestSize(rotor, exchange.diameter) : undefined;
    case "motor":
      return findById(book.motors, exchange.motor)?.data;
    case "pack":
      return findById(book.packs, exchange.pack)?.data;
    case "skirt":
      return findById(book.skirts, exchange.skirt)?.data;
  }
}

/** @returns what an exchange costs and how long it takes */
export function costOf(book: Book, exchange: Exchange): ExchangeCost {
  const bought = exchangedParts(exchange).map((part) => offerOf(book, exchange, part));
  return {
    price: bought.reduce((sum, each) => sum + (each?.price ?? 0), 0),
    leadTime: Math.max(0, ...bought.map((each) => each?.leadTime ?? 0)),
    count: bought.length,
  };
}

/** What was set for one part says nothing of another in its place. */
function overridesKept({ series, gap, ...kept }: Build["overrides"], exchange: Exchange): Build["overrides"] {
  return {
    ...kept,
    ...(exchange.pack === undefined && series !== undefined ? { series } : {}),
    ...(exchange.skirt === undefined && gap !== undefined ? { gap } : {}),
  };
}

/**
 * A build with parts of the book in the place of its own; a number typed for the whole goes with them.
 *
 *     m = m_whole + Σ (m_new − m_own);  u² = u_whole² + Σ (u_new² + u_own²)
 *
 * @param book - of its parts
 * @param build - as it stands
 * @param exchange - what takes the place of what
 * @returns the build with those parts [kg]
 *
 * Valid for parts that are weighed. Source: docs/method/mass.md, Swaps
 */
export function withExchange(book: Book, build: Build, exchange: Exchange): Build {
  const changed = { ...build, ...exchange, overrides: overridesKept(build.overrides, exchange) };
  const { mass } = build.vehicle;
  const parts = exchangedParts(exchange);
  if (mass === undefined || parts.length === 0) return changed;
  const lineOf = (of: Build) =>
    ledgerOf(book, of).lines.filter((line) => parts.some((part) => part === line.of));
  const [before, after] = [lineOf(build), lineOf(changed)];
  const sum = (lines: typeof before) => lines.reduce((total, line) => total + line.mass, 0);
  const uncertainty = Math.hypot(
    build.uncertainty["vehicle.mass"] ?? 0,
    ...[...before, ...after].map((line) => line.uncertainty),
  );
  return {
    ...changed,
    vehicle: { ...build.vehicle, mass: mass + sum(after) - sum(before) },
    uncertainty: { ...build.uncertainty, "vehicle.mass": uncertainty },
  };
}
