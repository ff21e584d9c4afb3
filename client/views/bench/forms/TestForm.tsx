import { useMemo, useRef, useState } from "preact/hooks";
import type { StoredOf } from "../../../../shared/model/record.ts";
import { stayer } from "../../../app/router.ts";
import { currentBook } from "../../../state/book.ts";
import { notice } from "../../../state/notice.ts";
import { Answer } from "../../../ui/Answer.tsx";
import { AskBeforeSaving } from "../../../ui/AskBeforeSaving.tsx";
import { AsLeft } from "../../../ui/AsLeft.tsx";
import { BusyButton } from "../../../ui/BusyButton.tsx";
import { keepFocus } from "../../../ui/keepFocus.ts";
import { RunningPanel } from "../running/RunningPanel.tsx";
import { NOTHING_YET } from "../running/result.ts";
import { runningResult } from "../running/run.ts";
import { ChangedMeanwhile } from "./ChangedMeanwhile.tsx";
import { ErrorSummary } from "./ErrorSummary.tsx";
import { KIND_FIELDS } from "./kindFields.ts";
import { type FormModel, forget } from "./model.ts";
import { RowTable } from "./RowTable.tsx";
import { CommonFields } from "./Sections.tsx";
import { save } from "./save.ts";

interface TestFormProps {
  readonly form: FormModel;
  readonly sentence: string;
  /** the test that is corrected; null for a new one */
  readonly test: StoredOf<"tests"> | null;
  readonly onSaved: (record: StoredOf<"tests">) => void;
  readonly onDiscard: () => void;
  readonly onStartOver: () => void;
}

/** The form of a test of any kind: readings first, what they say beside them, the circumstances below. */
export function TestForm({ form, sentence, test, onSaved, onDiscard, onStartOver }: TestFormProps) {
  const [changed, setChanged] = useState(false);
  const summary = useRef<HTMLDivElement>(null);
  const book = currentBook.value;
  const read = form.read.value;
  const running = useMemo(() => (book ? runningResult(read, book) : NOTHING_YET), [read, book]);
  const Own = KIND_FIELDS[form.spec.kind];
  const send = async (isConfirmed: boolean) => {
    const isHere = stayer();
    const saved = await save(form, test, isConfirmed);
    if ("asked" in saved) return;
    if ("record" in saved) {
      forget(form);
      if (isHere()) onSaved(saved.record);
    } else if ("changedMeanwhile" in saved) setChanged(true);
    else if ("refused" in saved) requestAnimationFrame(() => summary.current?.focus());
    if (!("record" in saved || "discarded" in saved || isHere())) {
      const why = form.problem.value ?? "Someone changed it meanwhile.";
      notice.value = `The test that you left was not saved. ${why} Open its form again to go on.`;
    }
  };
  const discard = () => {
    form.saving.peek()?.discard();
    forget(form);
    onDiscard();
  };
  return (
    <form
      class={`bench-form bench-form-${form.spec.kind}`}
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        if (!form.saving.value) void send(false);
      }}
    >
      <Answer sentence={sentence} />
      <AsLeft kept={form.kept} onStartOver={onStartOver} />
      <ErrorSummary form={form} box={summary} />
      {changed && test && <ChangedMeanwhile form={form} id={test.id} onDone={() => setChanged(false)} />}
      <div class="bench-form-columns">
        <div class="bench-form-main">
          <div class="bench-own">
            <Own form={form} />
          </div>
          <RowTable form={form} running={running} />
          <div class="bench-common">
            <CommonFields form={form} />
          </div>
        </div>
        <RunningPanel running={running} />
      </div>
      {form.questions.value ? (
        <AskBeforeSaving
          questions={form.questions.value}
          onSave={() => void send(true)}
          onBack={() => {
            form.questions.value = null;
          }}
        />
      ) : (
        <div class="bench-save">
          <BusyButton type="submit" class="primary" onMouseDown={keepFocus} busy={form.saving.value !== null}>
            {form.saving.value ? "Saving…" : test === null ? "Save the test" : "Save the correction"}
          </BusyButton>
          <button type="button" onClick={discard}>
            Discard
          </button>
        </div>
      )}
    </form>
  );
}
