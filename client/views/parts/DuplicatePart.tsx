import { useState } from "preact/hooks";
import type { Stored } from "../../../shared/model/record.ts";
import { navigate, stayer } from "../../app/router.ts";
import { ApiError } from "../../state/api.ts";
import { currentBook } from "../../state/book.ts";
import { saveProblem, sendRecord } from "../../state/sendRecord.ts";
import { copyOf } from "./copyOf.ts";
import type { FormSpec } from "./spec.ts";

interface Props {
  readonly form: FormSpec;
  readonly record: Stored<Record<string, unknown>>;
}

/** A part or build like this one, under a name of its own, opened to be changed. */
export function DuplicatePart({ form, record }: Props) {
  const [isBusy, setBusy] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const duplicate = async () => {
    const taken = (currentBook.value?.[form.collection] ?? []).map(({ data }) => data.name);
    const isHere = stayer();
    setBusy(true);
    try {
      const saved = await sendRecord(form.collection, null, copyOf(record.data, taken)).outcome;
      if (saved && isHere()) navigate("parts", `${form.collection}/${saved.id}`);
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      setProblem(saveProblem(error, true));
    } finally {
      setBusy(false);
    }
  };
  return (
    <span>
      <button type="button" class="plain" aria-disabled={isBusy} onClick={() => !isBusy && void duplicate()}>
        Duplicate
      </button>
      {problem && (
        <span class="field-error" role="alert">
          {problem}
        </span>
      )}
    </span>
  );
}
