import { useState } from "preact/hooks";
import { LONGEST_REASON } from "../../shared/model/baseLimits.ts";

interface GiveReasonProps {
  /** before the reason: "Struck out because" */
  readonly label: string;
  /** what it means for the record */
  readonly note: string;
  /** what the button does: "Strike it out" */
  readonly action: string;
  /** @returns why it could not be stored; null where it was */
  readonly onReason: (reason: string) => Promise<string | null>;
  readonly onDone: () => void;
}

/** Asks why a record goes out of use; without a reason nothing is done. */
export function GiveReason({ label, note, action, onReason, onDone }: GiveReasonProps) {
  const [reason, setReason] = useState("");
  const [problem, setProblem] = useState<string | null>(null);
  const give = async () => {
    if (reason.trim() === "") return setProblem("Say why, in a few words.");
    setProblem(await onReason(reason.trim()));
    return undefined;
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key !== "Enter") return;
    // in a form Enter would save the form
    event.preventDefault();
    void give();
  };
  return (
    <div class="give-reason">
      <label>
        <span class="field-label">{label}</span>
        <input
          type="text"
          data-next
          maxLength={LONGEST_REASON}
          autocomplete="off"
          value={reason}
          onInput={(event) => setReason(event.currentTarget.value)}
          onKeyDown={onKeyDown}
        />
      </label>
      <p class="quiet small">{note}</p>
      <p class="bench-buttons">
        <button type="button" onClick={() => void give()}>
          {action}
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
