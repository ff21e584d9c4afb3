import { useRef, useState } from "preact/hooks";
import { navigate } from "../../../app/router.ts";
import { keep } from "../../../state/bench.ts";
import { counted } from "../../../ui/count.ts";
import { ErrorSummary } from "../forms/ErrorSummary.tsx";
import type { FormModel } from "../forms/model.ts";
import { save } from "../forms/save.ts";
import { KINDS } from "../record/kinds.ts";
import { type ImportModel, keyOf, tooManyRows } from "./model.ts";

/** Shows in the one form on the screen what was wrong in the test that was sent; its rows are named by their lines. */
function showRefusal(model: ImportModel, sent: FormModel): void {
  const lines = new Map(model.points.value.good.map(({ row, line }) => [row.key, line]));
  const said = [...sent.shown.value].map(([path, message]): [string, string] => {
    const [head, key, column] = path.split(".");
    const line = head === "rows" && key !== undefined ? lines.get(Number(key)) : undefined;
    return line === undefined ? [path, message] : [`line ${line}${column ? `, ${column}` : ""}`, message];
  });
  model.form.submitted.value = true;
  model.form.serverErrors.value = new Map(said);
  model.form.problem.value = sent.problem.value;
}

/** Sends what is not saved yet, test by test. @returns the last one's id; null where one was refused */
async function sendAll(model: ImportModel, forms: readonly FormModel[]): Promise<string | null> {
  let last: string | null = null;
  for (const form of forms) {
    const saved = await save(form, null);
    if (!("record" in saved)) {
      showRefusal(model, form);
      return null;
    }
    model.saved.value = new Set([...model.saved.value, keyOf(form)]);
    keep("tests", saved.record);
    last = saved.record.id;
  }
  return last;
}

/** One test of all points, or one a speed, and the button that saves it. */
export function SaveImport({ model }: { readonly model: ImportModel }) {
  const [saving, setSaving] = useState(false);
  const box = useRef<HTMLDivElement>(null);
  const forms = model.forms.value;
  const left = forms.filter((form) => !model.saved.value.has(keyOf(form)));
  const count = model.points.value.good.length;
  const tooMany = tooManyRows(forms);
  const send = async () => {
    setSaving(true);
    const last = await sendAll(model, left);
    setSaving(false);
    if (last !== null) navigate("bench", null, { saved: last });
    else requestAnimationFrame(() => box.current?.focus());
  };
  return (
    <section class="bench-import-save">
      {model.kind === "curve" && (
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
              {each ? "one test a speed" : "one test"}
            </label>
          ))}
        </fieldset>
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
      <button
        type="button"
        class="primary"
        disabled={saving || count === 0 || tooMany !== null}
        onClick={() => void send()}
      >
        {saving
          ? "Saving…"
          : `Save ${counted(count, "point")} as ${counted(left.length, KINDS[model.kind].name.toLowerCase())}`}
      </button>
    </section>
  );
}
