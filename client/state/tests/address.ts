import type { TestsAsked } from "../../../shared/book/testsAsked.ts";

/** @returns what tests are asked for, as the API's query says it */
export function queryOf({ kind, names = {} }: TestsAsked): string {
  const said = Object.entries(names).sort(([a], [b]) => (a < b ? -1 : 1));
  return new URLSearchParams([...(kind ? [["kind", kind]] : []), ...said]).toString();
}

/** @returns the same for the same question */
export const keyOf = (asked: TestsAsked): string =>
  asked.fits ? "fits" : `${queryOf(asked)}${asked.newest ? " newest" : ""}`;

/** A test that is struck out stays in the book, and figures are based on a book without it. */
export function pathOfTests(query: string, limit: number, cursor: string | null): string {
  const paging = cursor === null ? "" : `&cursor=${encodeURIComponent(cursor)}`;
  return `/tests?limit=${limit}&struckOut=false${query && `&${query}`}${paging}`;
}
