import { useEffect, useState } from "preact/hooks";
import type { Stored } from "../../../shared/model/record.ts";
import { ApiError, api } from "../../state/api.ts";
import { currentBook } from "../../state/book.ts";
import { Differences } from "../../ui/Differences.tsx";
import { moment } from "../../ui/moment.ts";
import { changesOf } from "./changes.ts";
import type { FormSpec } from "./spec.ts";

interface HistoryProps {
  readonly form: FormSpec;
  readonly record: Stored<unknown>;
}

/** What a part or a build said before, change by change, the newest first. */
export function History({ form, record }: HistoryProps) {
  const [states, setStates] = useState<readonly Stored<unknown>[]>([]);
  const [failure, setFailure] = useState<string | null>(null);
  const { id, revision } = record;
  useEffect(() => {
    let wanted = revision > 1;
    if (!wanted) return setStates([]);
    api
      .get<{ items: readonly Stored<unknown>[] }>(`/${form.collection}/${encodeURIComponent(id)}/revisions`)
      .then(
        ({ items }) => wanted && setStates(items),
        (error: unknown) => {
          if (!(error instanceof ApiError)) throw error;
          if (wanted) setFailure(error.message);
        },
      );
    return () => {
      wanted = false;
    };
  }, [form.collection, id, revision]);
  if (failure) return <p class="field-error">{failure}</p>;
  if (states.length < 2) return null;
  const book = currentBook.value;
  return (
    <section class="bench-revisions">
      <h2>What it said before</h2>
      {states
        .slice(1)
        .map((after, i) => (
          <article key={after.revision}>
            <h3>Changed {moment(after.updatedAt)}</h3>
            <Differences
              differences={changesOf(form, states[i].data, after.data, book)}
              before="Before"
              after="Then"
            />
          </article>
        ))
        .reverse()}
      <p class="quiet small">First stored {moment(states[0].updatedAt)}.</p>
    </section>
  );
}
