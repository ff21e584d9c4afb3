import { type Exchange, exchangedParts, withExchange } from "../../shared/book/mass/exchange.ts";
import type { Book } from "../../shared/book/resolve.ts";
import type { Build } from "../../shared/model/build.ts";
import { BUILD } from "../../shared/model/limits.ts";
import { withinLimits } from "../../shared/units/limits.ts";
import { type Changes, changesFromQuery, changesToQuery, type HandleKey, withChanges } from "./handles.ts";

/** What can be exchanged for another of the book, in the order in which it is shown. */
export const PARTS_TRIED = ["rotor", "motor", "pack", "skirt"] as const;
export type PartTried = (typeof PARTS_TRIED)[number];

/** The setting that belongs to a part: what was tried of it says nothing of another in its place. */
const SETTING_OF: Readonly<Partial<Record<PartTried, HandleKey>>> = {
  rotor: "diameter",
  pack: "series",
  skirt: "gap",
};

/** @returns the build with the parts tried in the place of its own, their masses with them; settings as stored */
export function withParts(book: Book, build: Build, { parts }: Changes): Build {
  return parts ? withExchange(book, build, parts) : build;
}

/** @returns the build with everything that is tried: parts first, then settings */
export function withTried(book: Book, build: Build, tried: Changes): Build {
  return withChanges(withParts(book, build, tried), tried);
}

/** @returns whether an exchange of one part leaves the build as it is stored */
const isOwn = (build: Build, part: PartTried, exchange: Exchange): boolean =>
  exchange[part] === build[part] && (part !== "rotor" || exchange.diameter === build.diameter);

/**
 * What is tried, with one part exchanged, or given back where it is the build's own.
 *
 * @param build - as stored
 * @param tried - so far
 * @param part - which one
 * @param exchange - its identifier, a rotor's with the size [m]
 */
export function partTried(build: Build, tried: Changes, part: PartTried, exchange: Exchange): Changes {
  const { parts: before = {}, ...numbers } = tried;
  const { [part]: _was, ...kept } = before;
  if (part === "rotor") delete kept.diameter;
  const parts: Exchange = isOwn(build, part, exchange) ? kept : { ...kept, ...exchange };
  const setting = SETTING_OF[part];
  if (setting) delete numbers[setting];
  return exchangedParts(parts).length > 0 ? { ...numbers, parts } : numbers;
}

/** @returns what is tried as an address carries it, SI; of a rotor `size` is the diameter */
export function triedToQuery(tried: Changes): Record<string, string> {
  const { diameter, ...ids } = tried.parts ?? {};
  const named = Object.entries(ids).flatMap(([part, id]) => (id ? [[part, id]] : []));
  const size = diameter === undefined ? [] : [["size", String(diameter)]];
  return { ...changesToQuery(tried), ...Object.fromEntries([...named, ...size]) };
}

function exchangeIn(query: URLSearchParams, book: Book, part: PartTried): Exchange | null {
  const id = query.get(part);
  if (id === null || !book[`${part}s`].some((record) => record.id === id)) return null;
  if (part !== "rotor") return { [part]: id };
  const text = query.get("size") ?? "";
  const diameter = withinLimits(text.trim() === "" ? Number.NaN : Number(text), BUILD.diameter);
  return diameter === null ? null : { rotor: id, diameter };
}

/** @returns what an address tries; settings that can't be are left out, see `leftOutOf`, parts that the book doesn't have named in `unknown` */
export function triedFromQuery(
  query: URLSearchParams,
  book: Book | null,
): { readonly tried: Changes; readonly unknown: readonly PartTried[] } {
  const numbers = changesFromQuery(query);
  if (!book) return { tried: numbers, unknown: [] };
  const found = PARTS_TRIED.filter((part) => query.has(part)).map(
    (part) => [part, exchangeIn(query, book, part)] as const,
  );
  const parts: Exchange = Object.assign({}, ...found.map(([, exchange]) => exchange ?? {}));
  return {
    tried: exchangedParts(parts).length > 0 ? { ...numbers, parts } : numbers,
    unknown: found.flatMap(([part, exchange]) => (exchange === null ? [part] : [])),
  };
}
