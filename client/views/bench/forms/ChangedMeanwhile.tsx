import { useEffect, useState } from "preact/hooks";
import type { StoredOf } from "../../../../shared/model/record.ts";
import { ApiError, api } from "../../../state/api.ts";
import { currentBook, keep } from "../../../state/book.ts";
import { ChangedElsewhere } from "../../../ui/merge/ChangedElsewhere.tsx";
import { type Conflict, threeWay } from "../../../ui/merge/threeWay.ts";
import { differences } from "../record/differences.ts";
import type { Draft } from "../record/draft.ts";
import { merged } from "../record/merge.ts";
import { shownText } from "../record/names.ts";
import { writeDraft } from "../record/writeDraft.ts";
import { change, type FormModel } from "./model.ts";

interface ChangedMeanwhileProps {
  readonly form: FormModel;
  readonly id: string;
  readonly onDone: () => void;
}

interface Both {
  readonly theirs: Draft;
  readonly revision: number;
  readonly conflicts: readonly Conflict[];
}

/** What is typed beside what the book says now, both against what both began with. */
async function readBoth(form: FormModel, id: string): Promise<Both> {
  const path = `/tests/${encodeURIComponent(id)}/revisions`;
  const { items } = await api.get<{ items: readonly StoredOf<"tests">[] }>(path);
  const record = items[items.length - 1];
  keep("tests", record);
  const parts = currentBook.value ?? undefined;
  const began = items.find(({ revision }) => revision === form.revision.value);
  const [mine, theirs] = [form.draft.value, writeDraft(record.data, parts)];
  const show = shownText(form.spec, currentBook.value);
  const conflicts = threeWay(began ? writeDraft(began.data, parts) : null, mine, theirs, (before, after) =>
    differences(before, after, show),
  );
  return { theirs, revision: record.revision, conflicts };
}

/** Someone else corrected the test first: both corrections stand side by side, and are merged field by field. */
export function ChangedMeanwhile({ form, id, onDone }: ChangedMeanwhileProps) {
  const [both, setBoth] = useState<Both | null>(null);
  const [failure, setFailure] = useState<string | null>(null);
  const read = async () => {
    setFailure(null);
    try {
      setBoth(await readBoth(form, id));
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      setFailure(error.message);
    }
  };
  useEffect(() => {
    void read();
  }, []);
  return (
    <ChangedElsewhere
      what="test"
      conflicts={both?.conflicts ?? null}
      onMerge={(choices) => {
        if (!both) return;
        form.revision.value = both.revision;
        form.problem.value = null;
        change(form, merged(form.draft.value, both.theirs, choices));
        onDone();
      }}
      failure={failure}
      onRetry={() => void read()}
    />
  );
}
