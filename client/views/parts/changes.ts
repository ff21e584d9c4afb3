import type { Book } from "../../../shared/book/book.ts";
import type { Difference } from "../../ui/Differences.tsx";
import { type Draft, draftOf, type FormState, fieldsOf } from "./draft.ts";
import { uncertaintyPath } from "./numbers.ts";
import type { FieldSpec, FormSpec, SingleSpec } from "./spec.ts";

/** A field with what it is called. */
export interface Named {
  readonly path: string;
  readonly label: string;
  /** how its text is shown */
  readonly spec: SingleSpec | null;
}

/** Every field of a form by its path, a list's as far as either state goes. */
export function namesOf(form: FormSpec, rows: Readonly<Record<string, number>>): Named[] {
  return fieldsOf(form).flatMap((spec: FieldSpec): Named[] => {
    if (spec.kind === "list")
      return Array.from({ length: rows[spec.path] ?? 0 }, (_, i) =>
        spec.columns.map((column) => ({
          path: `${spec.path}.${i}.${column.path}`,
          label: `${spec.label} ${i + 1}, ${column.label.toLowerCase()}`,
          spec: column,
        })),
      ).flat();
    if (spec.kind === "marks") return [{ path: spec.path, label: "Estimated", spec: null }];
    const own = { path: spec.path, label: spec.label, spec };
    if (!("doubt" in spec) || !spec.doubt) return [own];
    return [own, { path: uncertaintyPath(spec.doubt), label: `${spec.label}, uncertainty`, spec }];
  });
}

/** @returns what a field says, a part by its name */
export function textFor({ path, spec }: Named, values: Draft, book: Book | null): string {
  const text = values[path] ?? "";
  if (spec?.kind === "choice") return spec.options.find(([value]) => value === text)?.[1] ?? text;
  if (spec?.kind !== "reference") return text;
  const part = book?.[spec.collection].find(({ id }) => id === text);
  return part ? part.data.name : text;
}

/** What lies in a record and has no field of its form: reasons of retiring, choices made on other screens. */
function otherChanges(form: FormSpec, before: unknown, after: unknown): Difference[] {
  const known = new Set([...fieldsOf(form).map(({ path }) => path.split(".")[0]), "uncertainty"]);
  const [was, is] = [before, after] as readonly Readonly<Record<string, unknown>>[];
  const keys = [...new Set([...Object.keys(was), ...Object.keys(is)])].filter((key) => !known.has(key));
  return keys.flatMap((path) => {
    const [from, to] = [was[path], is[path]].map((value) =>
      value === undefined ? "" : typeof value === "string" ? value : JSON.stringify(value),
    );
    return from === to
      ? []
      : [{ path, label: path === "retired" ? "Retired because" : path, before: from, after: to }];
  });
}

/** @returns what one state of a form says otherwise than another, field by field in the form's order, numbers in their units */
export function differencesOf(
  form: FormSpec,
  was: FormState,
  is: FormState,
  book: Book | null,
): Difference[] {
  const rows = Object.fromEntries(
    Object.keys({ ...was.rows, ...is.rows }).map((path) => [
      path,
      Math.max(was.rows[path] ?? 0, is.rows[path] ?? 0),
    ]),
  );
  return namesOf(form, rows)
    .filter(({ path }) => (was.values[path] ?? "") !== (is.values[path] ?? ""))
    .map((named) => ({
      path: named.path,
      label: named.label,
      before: textFor(named, was.values, book),
      after: textFor(named, is.values, book),
    }));
}

/** @returns what one state of a part says otherwise than another, what has no field of its form included */
export function changesOf(form: FormSpec, before: unknown, after: unknown, book: Book | null): Difference[] {
  const changed = differencesOf(form, draftOf(form, before), draftOf(form, after), book);
  return [...changed, ...otherChanges(form, before, after)];
}
