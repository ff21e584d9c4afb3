import { useRef, useState } from "preact/hooks";
import { navigate } from "../../../app/router.ts";
import { AskBeforeSaving, type Question } from "../../../ui/AskBeforeSaving.tsx";
import { BusyButton } from "../../../ui/BusyButton.tsx";
import { counted } from "../../../ui/count.ts";
import { ErrorSummary } from "../forms/ErrorSummary.tsx";
import { KINDS } from "../record/kinds.ts";
import { keepLayout } from "./layouts.ts";
import { type ImportModel, keyOf, tooManyRows } from "./model.ts";
import { TEST } from "./roles.ts";
import { questionsAbout, sendAll } from "./send.ts";

/** One test of all rows, one a speed, or one for each that a column names, and the button that saves them. */
export function SaveImport({ model }: { readonly model: ImportModel }) {
  const [saving, setSaving] = useState(false);
  const [questions, setQuestions] = useState<readonly Question[] | null>(null);
  const box = useRef<HTMLDivElement>(null);
  const forms = model.forms.value;
  const left = forms.filter((form) => !model.saved.value.has(keyOf(form)));
  const count = model.points.value.good.length;
  const tooMany = tooManyRows(forms);
  const { skipped } = model.points.value;
  const waits = skipped > 0 && !model.leavesOut.value;
  const { row, name } = KINDS[model.kind];
  const ask = () => {
    const wrong = left.some((form) => form.read.value.errors.size > 0);
    const found = wrong ? [] : questionsAbout(model, left);
    if (found.length === 0) return void send();
    setQuestions(found);
  };
  const send = async () => {
    setQuestions(null);
    setSaving(true);
    const last = await sendAll(model, left);
    setSaving(false);
    if (last !== null) rememberLayout(model);
    if (last !== null) navigate("bench", null, { saved: last });
    else requestAnimationFrame(() => box.current?.focus());
  };
  return (
    <section class="bench-import-save">
      {model.kind === "curve" && <PerSpeed model={model} />}
      {skipped > 0 && (
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
      )}
      <ErrorSummary form={model.form} box={box} />
      {tooMany && (
        <p class="field-error" role="alert">
          {tooMany}
        </p>
      )}
      {left.length < forms.length && (
        <p role="status">
          {counted(forms.length - left.length, "test")} saved, {left.length} left.
        </p>
      )}
      {questions ? (
        <AskBeforeSaving questions={questions} onSave={() => void send()} onBack={() => setQuestions(null)} />
      ) : (
        <BusyButton
          type="button"
          class="primary"
          busy={saving}
          disabled={count === 0 || tooMany !== null || waits || model.linesRead.value !== null}
          onClick={ask}
        >
          {saving ? "Saving…" : `Save ${counted(count, row)} as ${counted(left.length, name.toLowerCase())}`}
        </BusyButton>
      )}
    </section>
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
