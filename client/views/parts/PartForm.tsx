import { useRef, useState } from "preact/hooks";
import type { FieldError } from "../../../shared/model/api/errors.ts";
import type { Stored } from "../../../shared/model/record.ts";
import { href, navigate, stayer } from "../../app/router.ts";
import { ApiError } from "../../state/api.ts";
import { forgetDraft } from "../../state/drafts.ts";
import { notice } from "../../state/notice.ts";
import { type Saving, saveRecord } from "../../state/saveRecord.ts";
import { saveProblem } from "../../state/sendRecord.ts";
import type { Waiting } from "../../state/waiting/list.ts";
import { AskBeforeSaving, type Question } from "../../ui/AskBeforeSaving.tsx";
import { AsLeft } from "../../ui/AsLeft.tsx";
import { withArticle } from "../../ui/article.ts";
import { BusyButton } from "../../ui/BusyButton.tsx";
import { keepFocus } from "../../ui/keepFocus.ts";
import { Problem } from "../../ui/Problem.tsx";
import { DuplicatePart } from "./DuplicatePart.tsx";
import { addressOf, type Editing, type Errors, errorsOf, useEditing } from "./editing.ts";
import { FieldOf } from "./FieldOf.tsx";
import { History } from "./History.tsx";
import { Outdated } from "./Outdated.tsx";
import { questionsOn } from "./questions.ts";
import { RemovePart } from "./RemovePart.tsx";
import { RetiredNote, RetirePart } from "./RetirePart.tsx";
import { refusalSentence } from "./refusal.ts";
import type { FormSpec, Section } from "./spec.ts";

type Data = Record<string, unknown>;

/** HTTP 412, Precondition Failed: another revision is in the book. */
const CHANGED_MEANWHILE = 412;

interface Props {
  readonly form: FormSpec;
  /** null: a new one */
  readonly record: Stored<Data> | null;
  /** what waits for the server and is opened again; null where nothing does */
  readonly waiting: Waiting | null;
}

/** The record as a correction of it waits. */
function asWaiting(record: Stored<Data> | null, waiting: Waiting | null): Stored<Data> | null {
  if (!(record && waiting?.before)) return record;
  return { ...record, revision: waiting.before.revision, data: waiting.data };
}

/** Brings the first field that was refused onto the screen, ready to be typed in. */
function goToFirst(page: HTMLElement | null): void {
  const field = page?.querySelector<HTMLElement>("[aria-invalid=true]");
  field?.scrollIntoView({ block: "center" });
  field?.focus({ preventScroll: true });
}

/** Adds or corrects one part or build; every refusal stands beside its field. It corrects the record as it was when the form opened: one changed meanwhile is refused. */
export function PartForm({ form, record: now, waiting: found }: Props) {
  // Sent while the form is open, it is corrected all the same.
  const [waiting] = useState(found);
  const [record, setRecord] = useState(() => asWaiting(now, waiting));
  const editor = useEditing(form, record, waiting);
  const { state, editing, read, errors, setRefused, submit, kept, startOver, put } = editor;
  const refusal = waiting?.refusal ?? null;
  const isOutdated = refusal?.status === CHANGED_MEANWHILE;
  const [trouble, setTrouble] = useState(
    refusal && !isOutdated ? refusalSentence(form, refusal.fields, refusal.message) : null,
  );
  const [sending, setSending] = useState<Saving<Data> | null>(null);
  const [outdated, setOutdated] = useState(isOutdated);
  const [questions, setQuestions] = useState<readonly Question[] | null>(null);
  const page = useRef<HTMLFormElement>(null);
  const refuse = (list: readonly FieldError[], message: string) => {
    submit();
    setTrouble(refusalSentence(form, list, message));
    requestAnimationFrame(() => goToFirst(page.current));
  };
  const send = async (isConfirmed: boolean) => {
    const { data, refused } = read;
    setQuestions(null);
    setRefused({});
    if (refused.length > 0) return refuse(refused, "");
    const found = isConfirmed ? [] : questionsOn(form, state, data);
    if (found.length > 0) return setQuestions(found);
    const under = saveRecord(form.collection, record, data, waiting);
    setSending(under);
    const isHere = stayer();
    try {
      const saved = await under.outcome;
      if (!saved) return;
      forgetDraft(addressOf(form, record, waiting));
      if (!isHere()) return;
      if ("waits" in saved) navigate("parts");
      else navigate("parts", null, { saved: `${form.collection}/${saved.stored.id}` });
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      const why = saveProblem(error, record === null);
      if (!isHere())
        notice.value = `The ${form.one} that you left was not saved. ${why} Open its form again to go on.`;
      if (error.status === CHANGED_MEANWHILE) return setOutdated(true);
      setRefused(errorsOf(error.fields));
      refuse(error.fields, why);
    } finally {
      setSending(null);
    }
  };
  const discard = () => {
    sending?.discard();
    forgetDraft(addressOf(form, record, waiting));
  };
  const title = record ? String(record.data.name) : `Add ${withArticle(form.one)}`;
  const history = record && <History form={form} record={record} />;
  return (
    <form
      class="part-form"
      ref={page}
      onSubmit={(event) => {
        event.preventDefault();
        void send(false);
      }}
      onInput={() => setQuestions(null)}
      noValidate
    >
      <p class="small">
        <a href={href("parts")}>Parts and builds</a>
      </p>
      <h1>{title}</h1>
      {record && <RetiredNote form={form} record={record} onStored={setRecord} />}
      <AsLeft kept={kept} onStartOver={() => startOver(record)} />
      {form.sections.map((section) => (
        <SectionOf key={section.title} section={section} editing={editing} open={hasError(section, errors)} />
      ))}
      {trouble && <Problem message={trouble} />}
      {outdated && record && (
        <Outdated
          form={form}
          record={record}
          state={state}
          onMerge={(newer, merged) => {
            setOutdated(false);
            setTrouble(null);
            setRecord(newer);
            put(merged, newer.revision);
          }}
        />
      )}
      {questions ? (
        <AskBeforeSaving
          questions={questions}
          onSave={() => void send(true)}
          onBack={() => setQuestions(null)}
        />
      ) : (
        <div class="form-end">
          <BusyButton type="submit" class="primary" onMouseDown={keepFocus} busy={sending !== null}>
            {sending ? "Saving…" : "Save"}
          </BusyButton>
          <a class="button" href={href("parts")} onClick={discard}>
            Cancel
          </a>
          {record && !waiting && <DuplicatePart form={form} record={record} />}
          {record && !waiting && <RetirePart form={form} record={record} onStored={setRecord} />}
          {record && !waiting && <RemovePart form={form} record={record} />}
        </div>
      )}
      {history}
    </form>
  );
}

function hasError(section: Section, errors: Errors): boolean {
  return section.fields.some((field) =>
    Object.keys(errors).some((path) => path === field.path || path.startsWith(`${field.path}.`)),
  );
}

function SectionOf({ section, editing, open }: { section: Section; editing: Editing; open: boolean }) {
  const fields = (
    <div class="form-fields">
      {section.fields.map((spec) => (
        <FieldOf key={spec.path} spec={spec} path={spec.path} editing={editing} />
      ))}
    </div>
  );
  if (!section.folded)
    return (
      <section>
        <h2>{section.title}</h2>
        {fields}
      </section>
    );
  return (
    <details class="form-section" open={open || undefined}>
      <summary>{section.title}</summary>
      {fields}
    </details>
  );
}
