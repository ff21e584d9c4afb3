import { useState } from "preact/hooks";
import type { StoredOf } from "../../../../shared/model/record.ts";
import { ApiError, api } from "../../../state/api.ts";
import { currentBook, keep } from "../../../state/book.ts";
import { type Difference, Differences } from "../../../ui/Differences.tsx";
import { Problem } from "../../../ui/Problem.tsx";
import { differences } from "../record/differences.ts";
import type { Draft } from "../record/draft.ts";
import { shownText } from "../record/names.ts";
import { writeDraft } from "../record/writeDraft.ts";
import { change, type FormModel } from "./model.ts";

interface ChangedMeanwhileProps {
  readonly form: FormModel;
  readonly id: string;
  readonly onDone: () => void;
}

interface Reloaded {
  readonly typed: Draft;
  readonly list: readonly Difference[];
}

/** Someone else corrected the test first: their state can be read in, what was typed here stays in sight beside it. */
export function ChangedMeanwhile({ form, id, onDone }: ChangedMeanwhileProps) {
  const [reloaded, setReloaded] = useState<Reloaded | null>(null);
  const [failure, setFailure] = useState<string | null>(null);
  const read = async () => {
    try {
      const record = await api.get<StoredOf<"tests">>(`/tests/${encodeURIComponent(id)}`);
      keep("tests", record);
      const typed = form.draft.value;
      const theirs = writeDraft(record.data, currentBook.value ?? undefined);
      setReloaded({ typed, list: differences(typed, theirs, shownText(form.spec, currentBook.value)) });
      form.revision.value = record.revision;
      change(form, theirs);
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      setFailure(error.message);
    }
  };
  if (!reloaded) {
    return (
      <Problem message="Not saved: someone changed this test meanwhile. What you typed is kept.">
        <p>
          <button type="button" onClick={() => void read()}>
            Reload it and keep what I typed in sight
          </button>
        </p>
        {failure && <p class="field-error">{failure}</p>}
      </Problem>
    );
  }
  return (
    <Problem message="The form now shows what the book says. Where yours differs:">
      <Differences differences={reloaded.list} before="You typed" after="The book says" />
      <p class="bench-buttons">
        <button
          type="button"
          onClick={() => {
            change(form, reloaded.typed);
            onDone();
          }}
        >
          Put mine back into the form
        </button>
        <button type="button" onClick={onDone}>
          Go on with the book's
        </button>
      </p>
    </Problem>
  );
}
