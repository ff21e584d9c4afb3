import { useState } from "preact/hooks";
import { ApiError } from "../state/api.ts";
import { BusyButton } from "./BusyButton.tsx";
import { downloadText } from "./download.ts";

export interface SaveCsvProps {
  readonly label: string;
  /** of the file */
  readonly name: string;
  /** @throws {ApiError} */
  readonly make: () => Promise<string>;
}

/** Saves a list as CSV, all of its pages. */
export function SaveCsv({ label, name, make }: SaveCsvProps) {
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const save = async () => {
    setBusy(true);
    try {
      downloadText(await make(), name);
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
        {label}
      </BusyButton>
      {problem && <span class="field-error">{problem}</span>}
    </>
  );
}
