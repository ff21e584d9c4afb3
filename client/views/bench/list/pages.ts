import { useEffect, useRef, useState } from "preact/hooks";
import type { StoredOf } from "../../../../shared/model/record.ts";
import { ApiError, api } from "../../../state/api.ts";
import { currentBook } from "../../../state/book.ts";
import { type Filters, narrowed, pagePath } from "./filters.ts";

type Stored = StoredOf<"tests">;

interface Page {
  readonly items: readonly Stored[];
  readonly next: string | null;
}

export interface Pages {
  /** null until the first page has come */
  readonly items: readonly Stored[] | null;
  readonly hasMore: boolean;
  readonly failure: string | null;
  /** no server answered: the list is of the book on the screen, which holds nothing that is struck out */
  readonly withoutServer: boolean;
  readonly more: () => void;
}

const PAGE_SIZE = 25;
const MOST_AT_ONCE = 500;

/**
 * The list page by page. The old picture stays until the new one is there; whatever changes in the book is read again,
 * as far as the list was opened.
 *
 * @param filters - what the list is narrowed to
 * @param version - another value whenever the book's tests have changed
 */
export function usePages(filters: Filters, version: unknown): Pages {
  const [page, setPage] = useState<Page | null>(null);
  const [failure, setFailure] = useState<string | null>(null);
  const [withoutServer, setWithoutServer] = useState(false);
  const latest = useRef(new AbortController());
  const opened = useRef(PAGE_SIZE);
  const { kind, part, text } = filters;

  const read = async (limit: number, cursor: string | null, before: readonly Stored[]) => {
    latest.current.abort();
    latest.current = new AbortController();
    const { signal } = latest.current;
    try {
      const next = await api.get<Page>(pagePath({ kind, part, text }, limit, cursor), { signal });
      if (signal.aborted) return;
      setPage({ items: [...before, ...next.items], next: next.next });
      opened.current = Math.min(MOST_AT_ONCE, Math.max(PAGE_SIZE, before.length + next.items.length));
      setFailure(null);
      setWithoutServer(false);
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      if (signal.aborted) return;
      const known = error.status === 0 ? currentBook.peek() : null;
      if (known) setPage({ items: narrowed(known.tests, filters), next: null });
      setWithoutServer(known !== null);
      setFailure(known ? null : error.message);
    }
  };

  useEffect(() => {
    opened.current = PAGE_SIZE;
  }, [kind, part, text]);
  useEffect(() => {
    void read(opened.current, null, []);
  }, [kind, part, text, version]);

  return {
    items: page?.items ?? null,
    hasMore: page?.next != null,
    failure,
    withoutServer,
    more: () => {
      if (page?.next) void read(PAGE_SIZE, page.next, page.items);
    },
  };
}
