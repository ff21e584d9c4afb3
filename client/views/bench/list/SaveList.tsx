import { useState } from "preact/hooks";
import { ApiError } from "../../../state/api.ts";
import { currentBook } from "../../../state/book.ts";
import { BusyButton } from "../../../ui/BusyButton.tsx";
import { downloadText } from "../../../ui/download.ts";
import type { Filters } from "./filters.ts";
import { listCsv } from "./listCsv.ts";

/** Saves the list as it is narrowed, all of its pages. */
export function SaveList({ filters }: { readonly filters: Filters }) {
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const save = async () => {
    setBusy(true);
    try {
      downloadText(await listCsv(filters, currentBook.value), "tests.csv");
      setProblem(null);
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      setProblem(error.message);
    } finally {
      setBusy(false);
    }
  };
  return (
    <>
      <BusyButton type="button" class="plain" busy={busy} onClick={() => void save()}>
        save the list as CSV
      </BusyButton>
      {problem && <span class="field-error">{problem}</span>}
    </>
  );
}
