import { useState } from "preact/hooks";
import type { Stored } from "../../../shared/model/record.ts";
import { ApiError, api } from "../../state/api.ts";
import { keep } from "../../state/book.ts";
import { Problem } from "../../ui/Problem.tsx";
import type { FormSpec } from "./spec.ts";

type Subject = Stored<Record<string, unknown>>;

interface OutdatedProps {
  readonly form: FormSpec;
  readonly id: string;
  /** the record as the book has it now; `mine`: what was typed stays in the form */
  readonly onRead: (newer: Subject, mine: boolean) => void;
}

/** Someone else changed the record first: theirs can be shown, or what was typed here kept to be saved over it. */
export function Outdated({ form, id, onRead }: OutdatedProps) {
  const [failure, setFailure] = useState<string | null>(null);
  const read = async (mine: boolean) => {
    try {
      const newer = await api.get<Subject>(`/${form.collection}/${encodeURIComponent(id)}`);
      keep(form.collection, newer);
      onRead(newer, mine);
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      setFailure(error.message);
    }
  };
  return (
    <Problem
      message={`Not saved: this ${form.one} was changed meanwhile, on another screen. What you typed is kept.`}
    >
      <p class="bench-buttons">
        <button type="button" onClick={() => void read(true)}>
          Keep mine; Save then writes over the other
        </button>
        <button type="button" onClick={() => void read(false)}>
          Show the other, leave mine
        </button>
      </p>
      {failure && <p class="field-error">{failure}</p>}
    </Problem>
  );
}
