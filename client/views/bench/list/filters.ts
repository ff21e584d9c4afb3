import type { StoredOf } from "../../../../shared/model/record.ts";
import { KIND_ORDER } from "../record/kinds.ts";

/** What the list is narrowed to, as the address says it. */
export interface Filters {
  readonly kind: string;
  /** "rotor:b8" */
  readonly part: string;
  readonly text: string;
}

const PART = /^(rotor|motor|pack|skirt|surface|gear|build):([a-z0-9-]+)$/;

/** @returns the filters in an address; what is none is left out */
export function filtersOf(query: URLSearchParams): Filters {
  const kind = KIND_ORDER.find((known) => known === query.get("kind")) ?? "";
  const part = query.get("part") ?? "";
  return { kind, part: PART.test(part) ? part : "", text: query.get("q") ?? "" };
}

export const isFiltered = ({ kind, part, text }: Filters): boolean => `${kind}${part}${text.trim()}` !== "";

/** @returns the filters as an address carries them, those not set left out */
export function queryOf({ kind, part, text }: Filters): Record<string, string> {
  return Object.fromEntries(Object.entries({ kind, part, q: text }).filter(([, value]) => value !== ""));
}

/** @returns the API's address of one page of the list */
export function pagePath(filters: Filters, limit: number, cursor: string | null): string {
  const query = new URLSearchParams({ limit: String(limit) });
  const [, key, id] = PART.exec(filters.part) ?? [];
  if (filters.kind) query.set("kind", filters.kind);
  if (key !== undefined) query.set(key, id);
  if (filters.text.trim()) query.set("q", filters.text.trim());
  if (cursor !== null) query.set("cursor", cursor);
  return `/tests?${query}`;
}

const descending = (a: string, b: string): number => (a < b ? 1 : a > b ? -1 : 0);

/** @returns tests of the book on the screen that the list is narrowed to, in the list's order: for when no server answers */
export function narrowed(tests: readonly StoredOf<"tests">[], filters: Filters): StoredOf<"tests">[] {
  const [, key, id] = PART.exec(filters.part) ?? [];
  const text = filters.text.trim().toLowerCase();
  return tests
    .filter(({ data }) => filters.kind === "" || data.kind === filters.kind)
    .filter(({ data }) => key === undefined || (data as Readonly<Record<string, unknown>>)[key] === id)
    .filter(({ data }) => data.title.toLowerCase().includes(text))
    .sort((a, b) => descending(a.data.date, b.data.date) || descending(a.createdAt, b.createdAt));
}
