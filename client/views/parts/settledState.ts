import { settledText } from "../../../shared/units/settled.ts";
import { type FormState, fieldsOf, isNumeric } from "./draft.ts";
import { numberAt, uncertaintyPath } from "./numbers.ts";
import type { FieldSpec, FormSpec } from "./spec.ts";

/** Paths at which a field has numbers, in each row of a list and with its uncertainty. */
function pathsOf(spec: FieldSpec, rows: FormState["rows"]): (readonly [path: string, spec: FieldSpec])[] {
  if (spec.kind === "list")
    return Array.from({ length: rows[spec.path] ?? 0 }, (_, i) =>
      spec.columns.map((column) => [`${spec.path}.${i}.${column.path}`, column] as const),
    ).flat();
  const doubt = "doubt" in spec && spec.doubt ? [[uncertaintyPath(spec.doubt), spec] as const] : [];
  return [[spec.path, spec], ...doubt];
}

/** @returns a form's state with the unit written out behind each number that has none */
export function settledState(form: FormSpec, state: FormState): FormState {
  const { values, rows } = state;
  const settled = fieldsOf(form)
    .flatMap((spec) => pathsOf(spec, rows))
    .flatMap(([path, spec]) => {
      const text = values[path];
      if (text === undefined || !isNumeric(spec)) return [];
      const number = numberAt(form, spec, path, (other) => values[other]);
      return [[path, settledText(number, text)] as const];
    });
  return { values: { ...values, ...Object.fromEntries(settled) }, rows };
}
