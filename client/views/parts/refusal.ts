import type { FieldError } from "../../../shared/model/api/errors.ts";
import type { TypedQuantity } from "../../../shared/units/parse.ts";
import { type Draft, fieldsOf, uncertaintyPath } from "./draft.ts";
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

/** How the server begins where it quotes a number, in SI. */
const READ = /^Read (-?[\d.e+-]+);/;

/** A value that a record may lack is left empty in a form. */
const emptied = (message: string): string => message.replace(/, or null\.$/, ", or empty.");

const isQuantity = (value: Draft[string] | undefined): value is TypedQuantity =>
  typeof value === "object" && value !== null;

/**
 * The server speaks of the stored number; its message gains the one that was typed: "Read -5 g, that is -0.005; allowed: kg, …".
 *
 * @param fields - refusals by path
 * @param values - what stands in the fields
 */
export function asTyped(fields: readonly FieldError[], values: Draft): FieldError[] {
  return fields.map(({ path, message }) => {
    const typed = values[path];
    const stored = READ.exec(message)?.[1];
    if (!isQuantity(typed) || stored === undefined || Number(stored) === typed.value)
      return { path, message: emptied(message) };
    const said = `Read ${typed.value} ${typed.unit}, that is ${Number(Number(stored).toPrecision(6))};`;
    return { path, message: emptied(message.replace(READ, said)) };
  });
}
