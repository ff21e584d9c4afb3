import { useRef, useState } from "preact/hooks";
import type { FieldError } from "../../../shared/model/api/errors.ts";
import type { Stored } from "../../../shared/model/record.ts";
import { type Draft, draftOf, type FormState, withoutRow } from "./draft.ts";
import type { Editing } from "./FieldOf.tsx";
import { forgetState, keepState, keptState } from "./kept.ts";
import type { FormSpec } from "./spec.ts";

type Subject = Stored<Record<string, unknown>> | null;

export type Errors = Readonly<Record<string, string>>;

/** @returns messages by the path of their field */
export function errorsOf(list: readonly FieldError[]): Errors {
  return Object.fromEntries(list.map(({ path, message }) => [path, message]));
}

/** @returns under which what is typed is kept in this tab */
export function addressOf(form: FormSpec, record: Subject): string {
  return `${form.collection}/${record?.id ?? "new"}`;
}

/** The fields' state, kept in this tab until it is saved. */
function useKept(form: FormSpec, record: Subject) {
  const address = addressOf(form, record);
  const revision = record?.revision ?? null;
  const [kept] = useState(() => keptState(address, revision));
  const [state, setState] = useState<FormState>(() => kept ?? draftOf(form, record?.data ?? {}));
  const [round, setRound] = useState(0);
  const update = (next: (now: FormState) => FormState) =>
    setState((now) => {
      const changed = next(now);
      keepState(address, changed, revision);
      return changed;
    });
  const reset = (subject: Subject) => {
    forgetState(address);
    setState(draftOf(form, subject?.data ?? {}));
    setRound(round + 1);
  };
  return { state, update, reset, round, wasKept: kept !== null && round === 0 };
}

/** A form's state, what is wrong with it, and the ways to change it. */
export function useEditing(form: FormSpec, record: Subject) {
  const { state, update, reset, round, wasKept } = useKept(form, record);
  const [errors, setErrors] = useState<Errors>({});
  const problems = useRef(new Map<string, string>());
  const clear = () => {
    problems.current.clear();
    setErrors({});
  };
  const change = (path: string, value: Draft[string]) => {
    update((now) => ({ ...now, values: { ...now.values, [path]: value } }));
    setErrors(({ [path]: _gone, ...rest }) => rest);
  };
  const editing: Editing = {
    form,
    valueAt: (path) => state.values[path],
    rowsOf: (path) => state.rows[path] ?? 0,
    errorAt: (path) => errors[path],
    set: change,
    problem: (path, message) => {
      if (message === null) problems.current.delete(path);
      else problems.current.set(path, message);
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
  return { state, editing, errors, setErrors, problems: problems.current, wasKept, round, startOver };
}
