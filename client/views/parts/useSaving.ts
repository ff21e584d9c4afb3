import { useState } from "preact/hooks";
import type { FieldError } from "../../../shared/model/api/errors.ts";
import type { Stored } from "../../../shared/model/record.ts";
import { navigate, stayer } from "../../app/router.ts";
import { ApiError } from "../../state/api.ts";
import { forgetDraft } from "../../state/drafts.ts";
import { notice } from "../../state/notice.ts";
import { type Saving as Sending, saveRecord } from "../../state/saveRecord.ts";
import { saveProblem } from "../../state/sendRecord.ts";
import type { Waiting } from "../../state/waiting/list.ts";
import type { Question } from "../../ui/AskBeforeSaving.tsx";
import { addressOf, errorsOf, type useEditing } from "./editing.ts";
import { questionsOn } from "./questions.ts";
import { refusalSentence } from "./refusal.ts";
import type { FormSpec } from "./spec.ts";

export type Data = Record<string, unknown>;

/** HTTP 412, Precondition Failed: another revision is in the book. */
const CHANGED_MEANWHILE = 412;

export interface Saving {
  /** what is wrong with the whole */
  readonly trouble: string | null;
  /** the record was changed meanwhile */
  readonly outdated: boolean;
  /** what is asked before it is saved */
  readonly questions: readonly Question[] | null;
  readonly isBusy: boolean;
  readonly send: (isConfirmed: boolean) => Promise<void>;
  /** back from the questions to the form */
  readonly back: () => void;
  /** what was changed meanwhile is in the form */
  readonly merged: () => void;
  readonly discard: () => void;
}

interface Subject {
  readonly form: FormSpec;
  readonly record: Stored<Data> | null;
  readonly waiting: Waiting | null;
}

type Editor = Pick<ReturnType<typeof useEditing>, "state" | "read" | "setRefused" | "submit">;

/** What was refused, at first what the server said of a record that waited; `onRefused` is called once its messages are shown. */
function useRefusals(
  { form, record, waiting }: Subject,
  { setRefused, submit }: Editor,
  onRefused: () => void,
) {
  const refusal = waiting?.refusal ?? null;
  const isOutdated = refusal?.status === CHANGED_MEANWHILE;
  const [trouble, setTrouble] = useState(
    refusal && !isOutdated ? refusalSentence(form, refusal.fields, refusal.message) : null,
  );
  const [outdated, setOutdated] = useState(isOutdated);
  const refuse = (list: readonly FieldError[], message: string) => {
    submit();
    setTrouble(refusalSentence(form, list, message));
    onRefused();
  };
  const fail = (error: ApiError, isHere: boolean) => {
    const why = saveProblem(error, record === null);
    if (!isHere)
      notice.value = `The ${form.one} that you left was not saved. ${why} Open its form again to go on.`;
    if (error.status === CHANGED_MEANWHILE) return setOutdated(true);
    setRefused(errorsOf(error.fields));
    refuse(error.fields, why);
  };
  const merged = () => {
    setOutdated(false);
    setTrouble(null);
  };
  return { trouble, outdated, refuse, fail, merged };
}

/** Saves what a form holds, its questions answered first. */
export function useSaving(subject: Subject, editor: Editor, onRefused: () => void): Saving {
  const { form, record, waiting } = subject;
  const { state, read, setRefused } = editor;
  const { trouble, outdated, refuse, fail, merged } = useRefusals(subject, editor, onRefused);
  const [sending, setSending] = useState<Sending<Data> | null>(null);
  const [questions, setQuestions] = useState<readonly Question[] | null>(null);
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
      fail(error, isHere());
    } finally {
      setSending(null);
    }
  };
  return {
    trouble,
    outdated,
    questions,
    isBusy: sending !== null,
    send,
    back: () => setQuestions(null),
    merged,
    discard: () => {
      sending?.discard();
      forgetDraft(addressOf(form, record, waiting));
    },
  };
}
