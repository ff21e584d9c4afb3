import { useState } from "preact/hooks";
import type { LedgerLine } from "../../../shared/model/ledger.ts";
import { MASS_GROUPS } from "../../../shared/model/massGroups.ts";
import { headed } from "../../../shared/units/showing.ts";
import { BusyButton } from "../../ui/BusyButton.tsx";
import { SelectField, TextField } from "../../ui/Field.tsx";
import { NumberField } from "../../ui/NumberField.tsx";
import { Alternatives } from "./Alternatives.tsx";
import {
  groupOf,
  type LineDraft,
  type LineProblems,
  PIECE_MASS,
  PIECE_UNCERTAINTY,
  QUANTITY,
  readLine,
} from "./line.ts";
import { MadeFields } from "./MadeFields.tsx";
import { groupTitle } from "./massWords.ts";

export interface LineFormProps {
  readonly title: string;
  readonly draft: LineDraft;
  /** lines of the ledger besides this one */
  readonly others: readonly LedgerLine[];
  readonly onDraft: (draft: LineDraft) => void;
  /** @returns why it was refused; null where it was stored */
  readonly onSave: (line: LedgerLine) => Promise<string | null>;
  readonly onCancel: () => void;
}

const GROUPS = MASS_GROUPS.map((group) => ({ value: group, label: groupTitle(group) }));
const BASES = [
  { value: "estimated", label: "estimated" },
  { value: "weighed", label: "weighed" },
];

/** What an uncertainty is taken as where none is typed. */
function unsureHint({ basis, made, mass }: LineDraft): string {
  if (made.by !== "" && mass.trim() === "")
    return "5 % and what the material's grades differ by unless given";
  return basis === "estimated" ? "15 % unless given" : "0 unless given";
}

/** One line of the ledger: what it is, how many, how heavy, and how that is known. */
export function LineForm({ title, draft, others, onDraft, onSave, onCancel }: LineFormProps) {
  const [problems, setProblems] = useState<LineProblems>({});
  const [refusal, setRefusal] = useState<string | null>(null);
  const [isBusy, setBusy] = useState(false);
  const set = (change: Partial<LineDraft>) => {
    onDraft({ ...draft, ...change });
    setProblems({});
  };
  const save = async (event: Event) => {
    event.preventDefault();
    const read = readLine(draft, others);
    if ("problems" in read) return setProblems(read.problems);
    setBusy(true);
    setRefusal(await onSave(read.line));
    setBusy(false);
  };
  return (
    <form class="mass-line-form" onSubmit={(event) => void save(event)} noValidate data-next>
      <h3>{title}</h3>
      <LineFields draft={draft} problems={problems} onChange={set} />
      <MadeFields
        draft={draft.made}
        problems={problems}
        onDraft={(change) => set({ made: { ...draft.made, ...change } })}
      />
      <Alternatives draft={draft} problems={problems} onDraft={(alternatives) => set({ alternatives })} />
      {refusal && (
        <p class="field-error" role="alert">
          {refusal}
        </p>
      )}
      <BusyButton type="submit" class="primary" busy={isBusy}>
        {isBusy ? "Saving…" : "Save the line"}
      </BusyButton>{" "}
      <button type="button" onClick={onCancel}>
        Cancel
      </button>
    </form>
  );
}

interface LineFieldsProps {
  readonly draft: LineDraft;
  readonly problems: LineProblems;
  readonly onChange: (change: Partial<LineDraft>) => void;
}

/** What every line has. */
function LineFields({ draft, problems, onChange }: LineFieldsProps) {
  return (
    <div class="mass-line-fields">
      <TextField
        label="What it is"
        value={draft.name}
        placeholder="Wheel"
        error={problems.name}
        onChange={(name) => onChange({ name })}
      />
      <SelectField
        label="Group"
        value={draft.group}
        options={GROUPS}
        onChange={(group) => onChange({ group: groupOf(group) })}
      />
      <NumberField
        label="Pieces"
        spec={QUANTITY}
        text={draft.quantity}
        error={problems.quantity}
        onText={(quantity) => onChange({ quantity })}
      />
      <NumberField
        label={headed("Mass of a piece", "mass")}
        spec={PIECE_MASS}
        text={draft.mass}
        error={problems.mass}
        hint={draft.made.by === "" ? undefined : "from its drawing unless weighed"}
        onText={(mass) => onChange({ mass })}
      />
      <SelectField
        label="How it is known"
        value={draft.basis}
        options={BASES}
        onChange={(basis) => onChange({ basis: basis === "weighed" ? "weighed" : "estimated" })}
      />
      <NumberField
        label={headed("Standard uncertainty of a piece", "mass")}
        spec={PIECE_UNCERTAINTY}
        text={draft.uncertainty}
        error={problems.uncertainty}
        hint={unsureHint(draft)}
        onText={(uncertainty) => onChange({ uncertainty })}
      />
    </div>
  );
}
