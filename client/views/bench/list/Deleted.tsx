import { useEffect, useState } from "preact/hooks";
import type { Deletion } from "../../../../shared/model/api/book.ts";
import { COLLECTION_WORDS } from "../../../../shared/model/collections.ts";
import type { Stored } from "../../../../shared/model/record.ts";
import type { TestKind } from "../../../../shared/model/tests/index.ts";
import { ApiError, api } from "../../../state/api.ts";
import { currentBook } from "../../../state/book.ts";
import { wasWritten } from "../../../state/write.ts";
import { KIND_WORDS } from "../../../ui/kindWords.ts";
import { moment } from "../../../ui/moment.ts";

interface Page {
  readonly items: readonly Deletion[];
  readonly next: string | null;
}

const isKind = (kind: string | null): kind is TestKind => kind !== null && kind in KIND_WORDS;

/** What was deleted, as a list names it: "pull test of 2026-05-04". */
function wordsOf({ collection, kind, date }: Deletion): string {
  const word = isKind(kind) ? KIND_WORDS[kind] : COLLECTION_WORDS[collection];
  return date === null ? word : `${word} of ${date}`;
}

/** What was deleted, page by page, read anew when the book changes; nothing before it is open. */
function useDeleted(open: boolean) {
  const [page, setPage] = useState<Page | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const read = async (before: readonly Deletion[], cursor: string | null) => {
    try {
      const query = cursor === null ? "" : `&cursor=${encodeURIComponent(cursor)}`;
      const next = await api.get<Page>(`/deleted?limit=25${query}`);
      setPage({ items: [...before, ...next.items], next: next.next });
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      setProblem(error.message);
    }
  };
  const bringBack = async ({ collection, id }: Deletion) => {
    try {
      const back = await api.post<Stored<unknown>>(`/${collection}/${encodeURIComponent(id)}/restore`, {});
      setProblem(null);
      wasWritten(collection, null, back);
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      setProblem(error.message);
    }
  };
  const book = currentBook.value;
  useEffect(() => {
    if (open) void read([], null);
  }, [open, book]);
  const more = page?.next ? () => read(page.items, page.next) : null;
  return { items: page?.items ?? null, problem, more, bringBack };
}

/** What was deleted from the whole book, the last first: each comes back as it was. */
export function Deleted() {
  const [open, setOpen] = useState(false);
  const { items, problem, more, bringBack } = useDeleted(open);
  return (
    <details class="bench-fold bench-deleted" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        <span class="bench-fold-title">Deleted</span> tests, parts and builds; each can come back
      </summary>
      {problem && (
        <p class="field-error" role="alert">
          {problem}
        </p>
      )}
      {items?.length === 0 && <p class="quiet">Nothing is deleted.</p>}
      <ul class="bench-tests">
        {items?.map((each) => (
          <li class="bench-test" key={`${each.collection} ${each.id}`}>
            <time dateTime={each.deletedAt}>{moment(each.deletedAt)}</time>
            <p>
              {each.name || wordsOf(each)}
              {each.name && <span class="quiet"> {wordsOf(each)}</span>}
            </p>
            <button
              type="button"
              class="plain"
              onClick={() => void bringBack(each)}
              aria-label={`Bring back ${each.name || wordsOf(each)}`}
            >
              bring back
            </button>
          </li>
        ))}
      </ul>
      {more && (
        <button type="button" onClick={() => void more()}>
          More
        </button>
      )}
    </details>
  );
}
