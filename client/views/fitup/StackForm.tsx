import { useState } from "preact/hooks";
import { PART_SIZES } from "../../../shared/book/fitUp/partSizes.ts";
import {
  PART_DIMENSIONS,
  SIZE_BASES,
  type SizeBasis,
  type StoredStack,
} from "../../../shared/model/stacks.ts";
import { headed } from "../../../shared/units/showing.ts";
import { typedText } from "../../../shared/units/shown.ts";
import { BusyButton } from "../../ui/BusyButton.tsx";
import { SelectField, TextField } from "../../ui/Field.tsx";
import { NumberField } from "../../ui/NumberField.tsx";
import { BASIS_WORDS } from "./fitWords.ts";
import {
  EMPTY_LINE,
  type LineDraft,
  PIECES,
  readStack,
  SIZE,
  type StackDraft,
  type StackProblems,
  TOLERANCE,
} from "./stackDraft.ts";

const SOURCES = [
  { value: "", label: "a size of its own" },
  ...PART_DIMENSIONS.map((of) => ({ value: of, label: PART_SIZES[of].words })),
];
const BASES = SIZE_BASES.map((basis) => ({ value: basis, label: BASIS_WORDS[basis] }));
/** By how a size is known [m] */
const USUAL_TOLERANCE: Readonly<Record<SizeBasis, number | null>> = {
  drawn: 0.2e-3,
  measured: 0.05e-3,
  free: null,
};

function usualTolerance(basis: SizeBasis): string {
  const usual = USUAL_TOLERANCE[basis];
  return `${usual === null ? "none" : typedText(usual, "length", 3)} unless given`;
}

interface LineProps {
  readonly draft: LineDraft;
  /** of the stack: 0 is the space */
  readonly at: number;
  readonly problems: StackProblems;
  readonly onLine: (change: Partial<LineDraft>) => void;
  readonly onRemove: (() => void) | null;
}

/** One size: whose it is, how large, how well known. */
function LineFields({ draft, at, problems, onLine, onRemove }: LineProps) {
  const problem = (field: string) => problems[`lines.${at}.${field}`];
  return (
    <fieldset>
      <legend>{at === 0 ? "The space, from face to face" : `Part ${at}, from the lower face up`}</legend>
      <div class="fit-line-fields">
        <TextField
          label="Name"
          value={draft.name}
          error={problem("name")}
          onChange={(name) => onLine({ name })}
        />
        <SelectField
          label="Its size"
          value={draft.of}
          options={SOURCES}
          error={problem("of")}
          onChange={(of) => onLine({ of: PART_DIMENSIONS.find((each) => each === of) ?? "" })}
        />
        {draft.of === "" && (
          <NumberField
            label={headed("Size", "length")}
            spec={SIZE}
            text={draft.nominal}
            error={problem("nominal")}
            onText={(nominal) => onLine({ nominal })}
          />
        )}
        <SelectField
          label="How it is known"
          value={draft.basis}
          options={BASES}
          onChange={(basis) => onLine({ basis: SIZE_BASES.find((each) => each === basis) ?? "drawn" })}
        />
        <NumberField
          label={headed("Tolerance ±", "length")}
          spec={TOLERANCE}
          text={draft.tolerance}
          hint={usualTolerance(draft.basis)}
          error={problem("tolerance")}
          onText={(tolerance) => onLine({ tolerance })}
        />
        {at > 0 && (
          <NumberField
            label="Pieces"
            spec={PIECES}
            text={draft.quantity}
            error={problem("quantity")}
            onText={(quantity) => onLine({ quantity })}
          />
        )}
      </div>
      {onRemove && (
        <button type="button" class="plain" onClick={onRemove}>
          remove<span class="visually-hidden"> {draft.name}</span>
        </button>
      )}
    </fieldset>
  );
}

export interface StackFormProps {
  readonly title: string;
  readonly draft: StackDraft;
  /** stacks of the build besides this one */
  readonly others: readonly StoredStack[];
  readonly onDraft: (draft: StackDraft) => void;
  /** @returns why it was refused; null where it was stored */
  readonly onSave: (stack: StoredStack) => Promise<string | null>;
  readonly onCancel: () => void;
}

/** One stack: the space between two faces, and what stands in it. */
export function StackForm({ title, draft, others, onDraft, onSave, onCancel }: StackFormProps) {
  const [problems, setProblems] = useState<StackProblems>({});
  const [refusal, setRefusal] = useState<string | null>(null);
  const [isBusy, setBusy] = useState(false);
  const set = (change: Partial<StackDraft>) => {
    onDraft({ ...draft, ...change });
    setProblems({});
  };
  const setLine = (at: number, change: Partial<LineDraft>) =>
    set({ lines: draft.lines.map((each, i) => (i === at ? { ...each, ...change } : each)) });
  const save = async (event: Event) => {
    event.preventDefault();
    const read = readStack(draft, others);
    if ("problems" in read) return setProblems(read.problems);
    setBusy(true);
    setRefusal(await onSave(read.stack));
    setBusy(false);
  };
  const problem = refusal ?? problems.lines;
  return (
    <form class="fit-form" onSubmit={(event) => void save(event)} noValidate data-next>
      <h3>{title}</h3>
      <TextField
        label="Name of the stack"
        value={draft.name}
        error={problems.name}
        onChange={(name) => set({ name })}
      />
      {draft.lines.map((line, at) => (
        <LineFields
          key={at}
          draft={line}
          at={at}
          problems={problems}
          onLine={(change) => setLine(at, change)}
          onRemove={at === 0 ? null : () => set({ lines: draft.lines.filter((_, i) => i !== at) })}
        />
      ))}
      <p>
        <button type="button" class="plain" onClick={() => set({ lines: [...draft.lines, EMPTY_LINE] })}>
          Add a part
        </button>
      </p>
      {problem && (
        <p class="field-error" role="alert">
          {problem}
        </p>
      )}
      <BusyButton type="submit" class="primary" busy={isBusy}>
        {isBusy ? "Saving…" : "Save the stack"}
      </BusyButton>{" "}
      <button type="button" onClick={onCancel}>
        Cancel
      </button>
    </form>
  );
}
