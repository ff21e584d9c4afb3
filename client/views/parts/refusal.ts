import type { FieldError } from "../../../shared/model/api/errors.ts";
import { fieldsOf } from "./draft.ts";
import { uncertaintyPath } from "./numbers.ts";
import type { FieldSpec, FormSpec } from "./spec.ts";

const MARKED = "Nothing was saved: look at the marked fields.";

function holds(spec: FieldSpec, path: string): boolean {
  if (spec.path === path) return true;
  if ("doubt" in spec && spec.doubt && uncertaintyPath(spec.doubt) === path) return true;
  if (spec.kind !== "list" || !path.startsWith(`${spec.path}.`)) return false;
  const [, ...column] = path.slice(spec.path.length + 1).split(".");
  return spec.columns.some((each) => each.path === column.join("."));
}

/**
 * What stands above the buttons after a refusal: messages beside their fields are not said again.
 *
 * @param form - which fields there are
 * @param fields - what is wrong, by path
 * @param message - the refusal in one sentence, for one that speaks of no field
 */
export function refusalSentence(form: FormSpec, fields: readonly FieldError[], message: string): string {
  const specs = fieldsOf(form);
  const homeless = fields.filter(({ path }) => !specs.some((spec) => holds(spec, path)));
  if (fields.length === 0) return message;
  const rest = homeless.map((field) => field.message).join(" ");
  if (homeless.length === fields.length) return `Nothing was saved. ${rest}`;
  return rest === "" ? MARKED : `${MARKED} ${rest}`;
}
