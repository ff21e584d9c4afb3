import type { Book } from "../../../shared/book/resolve.ts";
import { offered } from "../../../shared/model/withdrawn.ts";
import { href } from "../../app/router.ts";

/** Most builds that stand side by side. */
export const MOST_COMPARED = 6;
/** Fewer than these are no comparison. */
const FEWEST = 2;

/** @returns the address of builds side by side, by their identifiers, the one that the others are held against first */
export function compareAddress(ids: readonly string[]): string {
  const kept = [...new Set(ids)].slice(0, MOST_COMPARED);
  return href("compare", null, kept.length > 0 ? { builds: kept.join(",") } : {});
}

/** What an address asks to compare. */
export interface AskedBuilds {
  readonly ids: readonly string[];
  /** what it names and the book doesn't have */
  readonly unknown: readonly string[];
  /** how many it names beyond the most */
  readonly tooMany: number;
}

/**
 * @param query - of the address
 * @param book - whose builds may be compared
 * @param last - the build looked at last: it and the next one stand there where the address names none
 */
export function askedBuilds(query: URLSearchParams, book: Book, last: string | null): AskedBuilds {
  const named = query.get("builds");
  if (named === null) {
    const others = offered(book.builds, last).map(({ id }) => id);
    const ids = [...new Set([...(last === null ? [] : [last]), ...others])].slice(0, FEWEST);
    return { ids, unknown: [], tooMany: 0 };
  }
  const all = [...new Set(named.split(",").filter(Boolean))];
  const known = all.filter((id) => book.builds.some((build) => build.id === id));
  return {
    ids: known.slice(0, MOST_COMPARED),
    unknown: all.filter((id) => !known.includes(id)),
    tooMany: Math.max(0, known.length - MOST_COMPARED),
  };
}
