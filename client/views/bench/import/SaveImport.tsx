import { useRef, useState } from "preact/hooks";
import { navigate } from "../../../app/router.ts";
import { AskBeforeSaving, type Question } from "../../../ui/AskBeforeSaving.tsx";
import { BusyButton } from "../../../ui/BusyButton.tsx";
import { counted } from "../../../ui/count.ts";
import { Status } from "../../../ui/Status.tsx";
import { ErrorSummary } from "../forms/ErrorSummary.tsx";
import { KINDS } from "../record/kinds.ts";
import { keepLayout } from "./layouts.ts";
import { type ImportModel, keyOf, tooManyRows } from "./model.ts";
import { TEST } from "./roles.ts";
import { questionsAbout, sendAll } from "./send.ts";

/** Asks what must be asked, then sends the tests that aren't saved yet. */
function useSending(model: ImportModel, left: ImportModel["forms"]["value"], onFault: () => void) {
  const [saving, setSaving] = useState(false);
  const [questions, setQuestions] = useState<readonly Question[] | null>(null);
  const send = async () => {
    setQuestions(null);
    setSaving(true);
    const last = await sendAll(model, left);
    setSaving(false);
    if (last !== null) rememberLayout(model);
    if (last !== null) navigate("bench", null, { saved: last });
    else onFault();
  };
  const ask = () => {
    const wrong = left.some((form) => form.read.value.errors.size > 0);
    const found = wrong ? [] : questionsAbout(model, left);
    if (found.length === 0) return void send();
    setQuestions(found);
  };
  return { saving, questions, ask, send, back: () => setQuestions(null) };
}

/** One test of all rows, one a speed, or one for each that a column names, and the button that saves them. */
export function SaveImport({ model }: { readonly model: ImportModel }) {
  const box = useRef<HTMLDivElement>(null);
  const forms = model.forms.value;
  const left = forms.filter((form) => !model.saved.value.has(keyOf(form)));
  const sending = useSending(model, left, () => requestAnimationFrame(() => box.current?.focus()));
  const count = model.points.value.good.length;
  const tooMany = tooManyRows(forms);
  const { skipped } = model.points.value;
  const waits = skipped > 0 && !model.leavesOut.value;
  const { row, name } = KINDS[model.kind];
  return (
    <section class="bench-import-save">
      {model.kind === "curve" && <PerSpeed model={model} />}
      {skipped > 0 && <LeavesOut model={model} skipped={skipped} />}
      <ErrorSummary form={model.form} box={box} />
      {tooMany && (
        <p class="field-error" role="alert">
          {tooMany}
        </p>
      )}
      {left.length < forms.length && (
        <Status>
          {counted(forms.length - left.length, "test")} saved, {left.length} left.
        </Status>
      )}
      {sending.questions ? (
        <AskBeforeSaving
          questions={sending.questions}
          onSave={() => void sending.send()}
          onBack={sending.back}
        />
      ) : (
        <BusyButton
          type="button"
          class="primary"
          busy={sending.saving}
          disabled={count === 0 || tooMany !== null || waits || model.linesRead.value !== null}
          onClick={sending.ask}
        >
          {sending.saving
            ? "Saving…"
            : `Save ${counted(count, row)} as ${counted(left.length, name.toLowerCase())}`}
        </BusyButton>
      )}
    </section>
  );
}

/** Without this word, no file is saved of which lines are skipped. */
function LeavesOut({ model, skipped }: { readonly model: ImportModel; readonly skipped: number }) {
  return (
    <label class="bench-leaves-out">
      <input
        type="checkbox"
        checked={model.leavesOut.value}
        onChange={(event) => {
          model.leavesOut.value = event.currentTarget.checked;
        }}
      />{" "}
      Save the rest without the {counted(skipped, "skipped line")}
    </label>
  );
}

/** The next file of this layout is read alike. */
function rememberLayout({ kind, table, mapping, only, splitBy }: ImportModel): void {
  if (!table.value) return;
  const layout = { mapping: mapping.value, only: only.value, splitBy: splitBy.value };
  keepLayout(kind, table.value.header, layout);
}

function PerSpeed({ model }: { readonly model: ImportModel }) {
  const isTitled = model.mapping.value.some(({ role }) => role === TEST);
  const one = isTitled ? "one test a title" : "one test";
  const many = isTitled ? "one test a title and speed" : "one test a speed";
  return (
    <fieldset>
      <legend>Save as</legend>
      {[false, true].map((each) => (
        <label key={String(each)}>
          <input
            type="radio"
            name="per-speed"
            checked={model.perSpeed.value === each}
            onChange={() => {
              model.perSpeed.value = each;
            }}
          />{" "}
          {each ? many : one}
        </label>
      ))}
    </fieldset>
  );
}
