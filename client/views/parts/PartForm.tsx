import { useRef, useState } from "preact/hooks";
import type { Stored } from "../../../shared/model/record.ts";
import { href } from "../../app/router.ts";
import type { Waiting } from "../../state/waiting/list.ts";
import { AskBeforeSaving } from "../../ui/AskBeforeSaving.tsx";
import { AsLeft } from "../../ui/AsLeft.tsx";
import { withArticle } from "../../ui/article.ts";
import { BusyButton } from "../../ui/BusyButton.tsx";
import { keepFocus } from "../../ui/keepFocus.ts";
import { Problem } from "../../ui/Problem.tsx";
import { DuplicatePart } from "./DuplicatePart.tsx";
import { type Editing, type Errors, useEditing } from "./editing.ts";
import { FieldOf } from "./FieldOf.tsx";
import { History } from "./History.tsx";
import { Outdated } from "./Outdated.tsx";
import { RemovePart } from "./RemovePart.tsx";
import { RetiredNote, RetirePart } from "./RetirePart.tsx";
import type { FormSpec, Section } from "./spec.ts";
import { type Data, type Saving, useSaving } from "./useSaving.ts";

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
  const { state, editing, errors, kept, startOver, put } = editor;
  const page = useRef<HTMLFormElement>(null);
  const saving = useSaving({ form, record, waiting }, editor, () =>
    requestAnimationFrame(() => goToFirst(page.current)),
  );
  const { trouble, outdated, questions } = saving;
  return (
    <form
      class="part-form"
      ref={page}
      onSubmit={(event) => {
        event.preventDefault();
        void saving.send(false);
      }}
      onInput={saving.back}
      noValidate
    >
      <p class="small">
        <a href={href("parts")}>Parts and builds</a>
      </p>
      <h1>{record ? String(record.data.name) : `Add ${withArticle(form.one)}`}</h1>
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
            saving.merged();
            setRecord(newer);
            put(merged, newer.revision);
          }}
        />
      )}
      {questions ? (
        <AskBeforeSaving questions={questions} onSave={() => void saving.send(true)} onBack={saving.back} />
      ) : (
        <FormEnd form={form} record={record} waiting={waiting} saving={saving} onStored={setRecord} />
      )}
      {record && <History form={form} record={record} />}
    </form>
  );
}

interface FormEndProps extends Props {
  readonly saving: Saving;
  readonly onStored: (record: Stored<Data>) => void;
}

/** What is done with the whole: saved, left, copied, retired, removed. */
function FormEnd({ form, record, waiting, saving: { isBusy, discard }, onStored }: FormEndProps) {
  return (
    <div class="form-end">
      <BusyButton type="submit" class="primary" onMouseDown={keepFocus} busy={isBusy}>
        {isBusy ? "Saving…" : "Save"}
      </BusyButton>
      <a class="button" href={href("parts")} onClick={discard}>
        Cancel
      </a>
      {record && !waiting && <DuplicatePart form={form} record={record} />}
      {record && !waiting && <RetirePart form={form} record={record} onStored={onStored} />}
      {record && !waiting && <RemovePart form={form} record={record} />}
    </div>
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
