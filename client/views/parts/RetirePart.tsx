import { useState } from "preact/hooks";
import type { Stored } from "../../../shared/model/record.ts";
import { withdrawnOf } from "../../../shared/model/withdrawn.ts";
import { withdraw } from "../../state/withdraw.ts";
import { GiveReason } from "../../ui/GiveReason.tsx";
import type { FormSpec } from "./spec.ts";

type Data = Record<string, unknown>;

interface RetireProps {
  readonly form: FormSpec;
  readonly record: Stored<Data>;
  /** the record as it stands now, what is typed into the form untouched */
  readonly onStored: (record: Stored<Data>) => void;
}

/** Puts a part or a build out of use with a reason: what uses it keeps it, nothing new is offered it. */
export function RetirePart({ form, record, onStored }: RetireProps) {
  const [asked, setAsked] = useState(false);
  if (withdrawnOf(record.data) !== null) return null;
  const retire = async (reason: string) => {
    const { stored, problem } = await withdraw(form.collection, record, reason);
    if (stored) onStored(stored);
    if (problem === null) setAsked(false);
    return problem;
  };
  if (!asked)
    return (
      <button type="button" class="plain" onClick={() => setAsked(true)}>
        Retire
      </button>
    );
  return (
    <GiveReason
      label="Retired because"
      note="What uses it keeps it, and tests of it count; it is no longer offered where a part is chosen."
      action={`Retire this ${form.one}`}
      onReason={retire}
      onDone={() => setAsked(false)}
    />
  );
}

/** Says of a retired part why it is, and brings it back into use. */
export function RetiredNote({ form, record, onStored }: RetireProps) {
  const [problem, setProblem] = useState<string | null>(null);
  const why = withdrawnOf(record.data);
  if (why === null) return null;
  const bringBack = async () => {
    const back = await withdraw(form.collection, record, null);
    setProblem(back.problem);
    if (back.stored) onStored(back.stored);
  };
  return (
    <p class="retired-note">
      <strong>Retired:</strong> {why}{" "}
      <button type="button" onClick={() => void bringBack()}>
        Use it again
      </button>
      {problem && (
        <span class="field-error" role="alert">
          {problem}
        </span>
      )}
    </p>
  );
}
