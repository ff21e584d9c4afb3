import { useMemo, useRef } from "preact/hooks";
import { findById } from "../../../../shared/book/book.ts";
import { leftOutOf } from "../../../../shared/book/leftOut/leftOut.ts";
import type { ChooseRequest } from "../../../../shared/model/api/choose.ts";
import { nameWithStanding, offered } from "../../../../shared/model/withdrawn.ts";
import { asProblem } from "../../../../shared/numeric/errors.ts";
import { BusyButton } from "../../../ui/BusyButton.tsx";
import { SelectField, TextField } from "../../../ui/Field.tsx";
import { LeftOutTests } from "../../../ui/LeftOutTests.tsx";
import { stuckBelow } from "../../../ui/stuckBelow.ts";
import { useSaid } from "../../../ui/useSaid.ts";
import { usePreview } from "../preview/usePreview.ts";
import { previewText } from "../words/searchSentences.ts";
import { type Counts, countSentence, tooManyText } from "./count.ts";
import { withText } from "./draft.ts";
import { DUTY } from "./fields.ts";
import { PartsToTry, type PartsToTryProps } from "./PartsToTry.tsx";
import { WantsForm } from "./WantsForm.tsx";

export interface ChooseFormProps extends Omit<PartsToTryProps, "base"> {
  readonly counts: Counts;
  /** null while something can't be read */
  readonly request: ChooseRequest | null;
  /** what is wrong with the whole, not with one field */
  readonly refusal: string | null;
  readonly busy: boolean;
  readonly onSolve: () => void;
}

/** The parts to try and what must hold. */
export function ChooseForm(props: ChooseFormProps) {
  const { book, draft, problemAt, onDraft, counts, refusal } = props;
  const base = findById(book.builds, draft.build)?.data ?? null;
  const { motors, rotors, packs, skirts } = draft.ticked;
  const leftOut = useMemo(
    () => asProblem(() => (base ? leftOutOf(book, { ...base, motors, rotors, packs, skirts }) : [])),
    [book, base, motors, rotors, packs, skirts],
  );
  const tooMany = tooManyText(counts);
  const preview = usePreview(book, props.request);
  const count = [`${countSentence(counts)}.`, tooMany, preview && previewText(preview)]
    .filter(Boolean)
    .join(" ");
  useSaid(preview ? count : null);
  const form = useRef<HTMLFormElement>(null);
  const solve = (event: Event) => {
    event.preventDefault();
    props.onSolve();
    form.current?.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus();
  };
  return (
    <form class="choose-form" ref={form} onSubmit={solve} noValidate>
      <Common book={book} base={base} draft={draft} problemAt={problemAt} onDraft={onDraft} />
      <h2>Parts to try</h2>
      <PartsToTry book={book} base={base} draft={draft} problemAt={problemAt} onDraft={onDraft} />
      {base && <LeftOutTests tests={leftOut} />}
      <h2>What must hold</h2>
      <WantsForm base={base} draft={draft} problemAt={problemAt} onDraft={onDraft} />
      <div class="choose-solve" ref={stuckBelow}>
        <p class={tooMany ? "small bad" : "small"}>{count}</p>
        {refusal && (
          <p class="field-error" role="alert">
            {refusal}
          </p>
        )}
        <BusyButton type="submit" class="primary" busy={props.busy}>
          Solve them
        </BusyButton>
      </div>
    </form>
  );
}

/** What all combinations have in common: the rest of the build, and the throttles to try. */
function Common({ book, base, draft, problemAt, onDraft }: PartsToTryProps) {
  return (
    <div class="choose-common">
      <SelectField
        label="The rest is as in"
        value={draft.build}
        options={[
          ...(base ? [] : [{ value: draft.build, label: "choose a build" }]),
          ...offered(book.builds, draft.build).map(({ id, data }) => ({
            value: id,
            label: nameWithStanding(data),
          })),
        ]}
        hint="vehicle, air, supply, surface, charge"
        error={problemAt("build")}
        onChange={(build) => onDraft({ ...draft, build })}
      />
      <TextField
        label={DUTY.label}
        value={draft.texts.duties ?? ""}
        hint="one or several: 100, 80"
        error={problemAt("duties")}
        onChange={(text) => onDraft(withText(draft, "duties", text))}
      />
    </div>
  );
}
