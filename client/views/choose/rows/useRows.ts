import { useEffect, useRef, useState } from "preact/hooks";
import { ApiError, api } from "../../../state/api.ts";
import type { Column, Combination, CombinationsPage } from "../answers.ts";
import { jobPath } from "../state/job.ts";
import { type Drawn, pagesOf } from "./virtual.ts";

export interface Sorting {
  readonly sort: Column;
  readonly order: "most" | "least";
  readonly only: "admissible" | "front" | "all";
  readonly kind: "any" | "ducted" | "open";
}

/** Rows at a time. */
export const PAGE = 100;

export interface Rows {
  /** the sorting that these rows stand in */
  readonly key: string | null;
  readonly total: number;
  readonly rows: ReadonlyMap<number, Combination>;
  readonly problem: ApiError | null;
}

const NONE: Rows = { key: null, total: 0, rows: new Map(), problem: null };

/** @returns address of a page of a job's combinations */
export function combinationsPath(
  job: string,
  { sort, order, only, kind }: Sorting,
  from: number,
  limit = PAGE,
): string {
  return `${jobPath(job)}/sets?sort=${sort}&order=${order}&only=${only}&kind=${kind}&from=${from}&limit=${limit}`;
}

function withPage(before: Rows, key: string, page: CombinationsPage): Rows {
  const rows = new Map(before.key === key ? before.rows : []);
  page.items.forEach((combination, i) => {
    rows.set(page.from + i, combination);
  });
  return { key, total: page.total, rows, problem: null };
}

/** The rows that are drawn, fetched page by page; those of the sorting before stay until the new ones are there. */
export function useRows(job: string, sorting: Sorting): { rows: Rows; need: (drawn: Drawn) => void } {
  const [rows, setRows] = useState<Rows>(NONE);
  const asked = useRef(new Set<string>());
  const key = combinationsPath(job, sorting, 0);
  const wanted = useRef(key);
  wanted.current = key;
  const fetchPage = (from: number) => {
    const path = combinationsPath(job, sorting, from);
    if (asked.current.has(path)) return;
    asked.current.add(path);
    api.get<CombinationsPage>(path).then(
      (page) => wanted.current === key && setRows((before) => withPage(before, key, page)),
      (error: unknown) => {
        if (!(error instanceof ApiError)) throw error;
        asked.current.delete(path);
        if (wanted.current === key) setRows((before) => ({ ...before, problem: error }));
      },
    );
  };
  useEffect(() => {
    asked.current.clear();
    fetchPage(0);
  }, [key]);
  const need = (drawn: Drawn) => {
    if (rows.key === key) for (const start of pagesOf(drawn, PAGE)) fetchPage(start);
  };
  return { rows, need };
}
