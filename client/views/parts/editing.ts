import { useMemo, useState } from "preact/hooks";
import type { FieldError } from "../../../shared/model/api/errors.ts";
import type { Stored } from "../../../shared/model/record.ts";
import { settledText } from "../../../shared/units/settled.ts";
import { forgetDraft, type Kept, keepDraft, keptDraft } from "../../state/drafts.ts";
import { draftOfWaiting, type Waiting } from "../../state/waiting/list.ts";
import { draftOf, type FormState, readForm, withoutRow } from "./draft.ts";
import { followsFrom, withFollowing } from "./follow.ts";
import { type NumericSpec, numberAt } from "./numbers.ts";
import { settledState } from "./settledState.ts";
import type { FormSpec, ListSpec, RectangleSpec } from "./spec.ts";

type Subject = Stored<Record<string, unknown>> | null;

export type Errors = Readonly<Record<string, string>>;

/** @returns messages by the path of their field */
export function errorsOf(list: readonly FieldError[]): Errors {
  return Object.fromEntries(list.map(({ path, message }) => [path, message]));
}

/** @returns under which what is typed is kept */
export function addressOf(form: FormSpec, record: Subject, waiting: Waiting | null): string {
  if (waiting) return draftOfWaiting(waiting);
  return `${form.collection}/${record?.id ?? "new"}`;
}

const isTexts = (value: unknown, type: "string" | "number"): boolean =>
  typeof value === "object" && value !== null && Object.values(value).every((each) => typeof each === type);

/** @returns whether what was kept is a form's state */
function isFormState(content: unknown): content is FormState {
  if (typeof content !== "object" || content === null) return false;
  const { values, rows } = content as Partial<FormState>;
  return isTexts(values, "string") && isTexts(rows, "number");
}

/** @returns what was typed over that very revision and not saved: what was typed over an older one is not shown over the newer */
export function keptOver(form: FormSpec, address: string, revision: number | null): Kept<FormState> | null {
  const settled = (state: FormState) => settledState(form, state);
  const found = keptDraft(address, { isContent: isFormState, settled });
  return found?.revision === revision ? found : null;
}

/** The fields' state, kept until it is saved. */
function useKept(form: FormSpec, record: Subject, waiting: Waiting | null) {
  const address = addressOf(form, record, waiting);
  const revision = record?.revision ?? null;
  const [kept, setKept] = useState(() => keptOver(form, address, revision));
  const dataOf = (subject: Subject) => subject?.data ?? waiting?.data ?? {};
  const [state, setState] = useState<FormState>(() => kept?.content ?? draftOf(form, dataOf(record)));
  const update = (next: (now: FormState) => FormState) =>
    setState((now) => {
      const changed = next(now);
      keepDraft(address, changed, revision);
      return changed;
    });
  const reset = (subject: Subject) => {
    forgetDraft(address);
    setKept(null);
    setState(draftOf(form, dataOf(subject)));
  };
  const replace = (next: FormState, over: number) => {
    keepDraft(address, next, over);
    setState(next);
  };
  return { state, update, reset, replace, kept, base: dataOf(record) };
}

/** What a form's fields show, and the ways to change it. */
export interface Editing {
  readonly form: FormSpec;
  readonly textAt: (path: string) => string;
  readonly rowsOf: (path: string) => number;
  /** a figure that follows from another field is not typed */
  readonly isFollowing: (path: string) => boolean;
  readonly errorAt: (path: string) => string | undefined;
  readonly set: (path: string, text: string) => void;
  /** a number's field was left: its unit is written out, and its message is shown from now on */
  readonly leave: (path: string, spec: NumericSpec | RectangleSpec) => void;
  readonly addRow: (spec: ListSpec) => void;
  readonly dropRow: (spec: ListSpec, at: number) => void;
}

/**
 * A form's state, what is wrong with it, and the ways to change it.
 *
 * @param waiting - what waits for the server and is opened again; null where nothing does
 */
export function useEditing(form: FormSpec, record: Subject, waiting: Waiting | null) {
  const { state, update, reset, replace, kept, base } = useKept(form, record, waiting);
  const [refused, setRefused] = useState<Errors>(() => errorsOf(waiting?.refusal?.fields ?? []));
  const [left, setLeft] = useState<ReadonlySet<string>>(new Set());
  const [submitted, setSubmitted] = useState(false);
  const read = useMemo(() => readForm(form, state, base), [form, state, base]);
  const own = read.refused.filter(({ path }) => submitted || left.has(path));
  const errors: Errors = { ...refused, ...errorsOf(own) };
  const clear = () => {
    setRefused({});
    setLeft(new Set());
    setSubmitted(false);
  };
  const set = (path: string, text: string) => {
    update((now) => ({ ...now, values: withFollowing(form, { ...now.values, [path]: text }) }));
    setRefused(({ [path]: _gone, ...rest }) => rest);
  };
  const editing: Editing = {
    form,
    textAt: (path) => state.values[path] ?? "",
    rowsOf: (path) => state.rows[path] ?? 0,
    isFollowing: (path) => followsFrom(form, path, state.values) !== null,
    errorAt: (path) => errors[path],
    set,
    leave: (path, spec) => {
      const text = state.values[path] ?? "";
      const written =
        spec.kind === "rectangle"
          ? text
          : settledText(
              numberAt(form, spec, path, (other) => state.values[other]),
              text,
            );
      if (written !== text) set(path, written);
      if (text.trim() !== "") setLeft((before) => new Set([...before, path]));
    },
    addRow: (spec) =>
      update((now) => ({ ...now, rows: { ...now.rows, [spec.path]: (now.rows[spec.path] ?? 0) + 1 } })),
    dropRow: (spec, at) => {
      clear();
      update((now) => withoutRow(now, spec, at));
    },
  };
  const startOver = (subject: Subject) => {
    clear();
    reset(subject);
  };
  const put = (next: FormState, revision: number) => {
    clear();
    replace(next, revision);
  };
  const submit = () => setSubmitted(true);
  return { state, editing, read, errors, setRefused, submit, kept, startOver, put };
}
