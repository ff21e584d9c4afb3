import { useState } from "preact/hooks";
import { LONGEST_REASON } from "../../../../shared/model/limits.ts";
import type { StoredOf } from "../../../../shared/model/record.ts";
import { ApiError } from "../../../state/api.ts";
import { correctRecord } from "../../../state/write.ts";

interface StrikeOutProps {
  readonly test: StoredOf<"tests">;
  readonly onDone: () => void;
}

/** Says why a test is struck out: it stays in the book, and no figure is based on it. */
export function StrikeOut({ test, onDone }: StrikeOutProps) {
  const [reason, setReason] = useState("");
  const [problem, setProblem] = useState<string | null>(null);
  const strike = async () => {
    if (reason.trim() === "") return setProblem("Say why, in a few words.");
    setProblem(await withReason(test, reason.trim()));
    return undefined;
  };
  return (
    <div class="bench-confirm">
      <label>
        <span class="field-label">Struck out because</span>
        <input
          type="text"
          data-next
          maxLength={LONGEST_REASON}
          autocomplete="off"
          value={reason}
          onInput={(event) => setReason(event.currentTarget.value)}
          onKeyDown={(event) => event.key === "Enter" && void strike()}
        />
      </label>
      <p class="quiet small">It stays in the list with the reason; no figure is based on it.</p>
      <p class="bench-buttons">
        <button type="button" onClick={() => void strike()}>
          Strike it out
        </button>
        <button type="button" onClick={onDone}>
          Keep it
        </button>
      </p>
      {problem && (
        <p class="field-error" role="alert">
          {problem}
        </p>
      )}
    </div>
  );
}

/** Stores a test with the reason for which it is struck out; null counts it again. @returns why it could not be stored, null where it was */
export async function withReason(test: StoredOf<"tests">, reason: string | null): Promise<string | null> {
  const { struckOut: _before, ...data } = test.data;
  try {
    await correctRecord("tests", test, reason === null ? data : { ...data, struckOut: reason });
    return null;
  } catch (error) {
    if (!(error instanceof ApiError)) throw error;
    return error.message;
  }
}
