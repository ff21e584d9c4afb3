import { useEffect, useState } from "preact/hooks";
import type { StoredOf } from "../../../../shared/model/record.ts";
import { ApiError, api } from "../../../state/api.ts";
import { currentBook } from "../../../state/book.ts";
import { Differences } from "../../../ui/Differences.tsx";
import { moment } from "../../../ui/moment.ts";
import { differences } from "../record/differences.ts";
import { KINDS } from "../record/kinds.ts";
import { shownText } from "../record/names.ts";
import { writeDraft } from "../record/writeDraft.ts";

type Stored = StoredOf<"tests">;

/** What a test said before, correction by correction, the newest first. */
export function Revisions({ id, revision }: { readonly id: string; readonly revision: number }) {
  const [states, setStates] = useState<readonly Stored[]>([]);
  const [failure, setFailure] = useState<string | null>(null);
  useEffect(() => {
    let wanted = revision > 1;
    if (!wanted) return setStates([]);
    api.get<{ items: readonly Stored[] }>(`/tests/${encodeURIComponent(id)}/revisions`).then(
      ({ items }) => wanted && setStates(items),
      (error: unknown) => {
        if (!(error instanceof ApiError)) throw error;
        if (wanted) setFailure(error.message);
      },
    );
    return () => {
      wanted = false;
    };
  }, [id, revision]);
  if (failure) return <p class="field-error">{failure}</p>;
  if (states.length < 2) return null;
  const corrections = states
    .slice(1)
    .map((after, i) => ({ before: states[i], after }))
    .reverse();
  return (
    <section class="bench-revisions">
      <h2>What it said before</h2>
      {corrections.map(({ before, after }) => (
        <article key={after.revision}>
          <h3>Corrected {moment(after.updatedAt)}</h3>
          <Differences differences={between(before, after)} before="Before" after="Then" />
        </article>
      ))}
      <p class="quiet small">First logged {moment(states[0].updatedAt)}.</p>
    </section>
  );
}

function between(before: Stored, after: Stored) {
  const show = shownText(KINDS[after.data.kind], currentBook.value);
  const parts = currentBook.value ?? undefined;
  return differences(writeDraft(before.data, parts), writeDraft(after.data, parts), show);
}
