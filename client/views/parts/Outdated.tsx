import { useEffect, useState } from "preact/hooks";
import type { Stored } from "../../../shared/model/record.ts";
import { ApiError, api } from "../../state/api.ts";
import { currentBook, keep } from "../../state/book.ts";
import { ChangedElsewhere } from "../../ui/merge/ChangedElsewhere.tsx";
import { type Conflict, threeWay } from "../../ui/merge/threeWay.ts";
import { differencesOf } from "./changes.ts";
import { draftOf, type FormState } from "./draft.ts";
import { merged } from "./merge.ts";
import type { FormSpec } from "./spec.ts";

type Subject = Stored<Record<string, unknown>>;

interface OutdatedProps {
  readonly form: FormSpec;
  /** as it was corrected */
  readonly record: Subject;
  /** what is typed */
  readonly state: FormState;
  /** the record as the book has it now, and what the form is to show over it */
  readonly onMerge: (newer: Subject, state: FormState) => void;
}

interface Both {
  readonly newer: Subject;
  readonly conflicts: readonly Conflict[];
}

/** What is typed beside what the book says now, both against what both began with. */
async function readBoth({ form, record, state }: OutdatedProps): Promise<Both> {
  const path = `/${form.collection}/${encodeURIComponent(record.id)}/revisions`;
  const { items } = await api.get<{ items: readonly Subject[] }>(path);
  const newer = items[items.length - 1];
  keep(form.collection, newer);
  const began = items.find(({ revision }) => revision === record.revision);
  const conflicts = threeWay(
    began ? draftOf(form, began.data) : null,
    state,
    draftOf(form, newer.data),
    (before, after) => differencesOf(form, before, after, currentBook.peek()),
  );
  return { newer, conflicts };
}

/** Someone else changed the record first: both stand side by side, and are merged field by field. */
export function Outdated(props: OutdatedProps) {
  const { form, state, onMerge } = props;
  const [both, setBoth] = useState<Both | null>(null);
  const [failure, setFailure] = useState<string | null>(null);
  const read = async () => {
    setFailure(null);
    try {
      setBoth(await readBoth(props));
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
      what={form.one}
      conflicts={both?.conflicts ?? null}
      onMerge={(choices) =>
        both && onMerge(both.newer, merged(form, state, draftOf(form, both.newer.data), choices))
      }
      failure={failure}
      onRetry={() => void read()}
    />
  );
}
