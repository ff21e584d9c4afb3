import type { Choices } from "../../ui/merge/threeWay.ts";
import { type FormState, fieldsOf, withoutRow } from "./draft.ts";
import { withFollowing } from "./follow.ts";
import type { FormSpec, ListSpec } from "./spec.ts";

const isList = (spec: { readonly kind: string }): spec is ListSpec => spec.kind === "list";

/** Takes the rows at a list's end away in which nothing is left. */
function withoutEmptyEnd(state: FormState, spec: ListSpec): FormState {
  const last = (state.rows[spec.path] ?? 0) - 1;
  if (last < 0 || spec.columns.some(({ path }) => state.values[`${spec.path}.${last}.${path}`])) return state;
  return withoutEmptyEnd(withoutRow(state, spec, last), spec);
}

/**
 * One state of a form of two, field by field.
 *
 * @param choices - by path, where a field's text comes from; where the two agree, none is needed
 */
export function merged(form: FormSpec, mine: FormState, theirs: FormState, choices: Choices): FormState {
  const values = { ...mine.values };
  for (const [path, side] of choices) if (side === "theirs") values[path] = theirs.values[path] ?? "";
  const lists = fieldsOf(form).filter(isList);
  const rows = Object.fromEntries(
    lists.map(({ path }) => [path, Math.max(mine.rows[path] ?? 0, theirs.rows[path] ?? 0)]),
  );
  const whole: FormState = { values: withFollowing(form, values), rows: { ...mine.rows, ...rows } };
  return lists.reduce(withoutEmptyEnd, whole);
}
