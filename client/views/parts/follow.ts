import { type Outline, outlineOf } from "../../../shared/model/parts/outlineOf.ts";
import { isGood } from "../../../shared/units/readNumber.ts";
import { readRectangle } from "../../../shared/units/rectangle.ts";
import { type Draft, fieldsOf } from "./draft.ts";
import { typedNumber } from "./numbers.ts";
import type { FormSpec, RectangleSpec } from "./spec.ts";

const isRectangle = (spec: { readonly kind: string }): spec is RectangleSpec => spec.kind === "rectangle";

/** @returns what follows from a rectangle as typed; null where it is empty or can't be read */
export function outlineIn(text: string | undefined): Outline | null {
  if (!text?.trim()) return null;
  const typed = readRectangle(text);
  return isGood(typed) ? outlineOf(typed) : null;
}

/** @returns the rectangle's field from whose text a figure follows now; null where it is typed itself */
export function followsFrom(form: FormSpec, path: string, values: Draft): RectangleSpec | null {
  const found = fieldsOf(form)
    .filter(isRectangle)
    .find(({ gives }) => Object.values(gives).includes(path));
  return found && outlineIn(values[found.path]) ? found : null;
}

/** @returns the texts with those that follow from a rectangle written anew */
export function withFollowing(form: FormSpec, values: Draft): Draft {
  const fields = fieldsOf(form);
  const followed = { ...values };
  for (const { path, gives } of fields.filter(isRectangle)) {
    const outline = outlineIn(values[path]);
    if (!outline) continue;
    for (const [figure, at] of Object.entries(gives)) {
      const spec = fields.find((field) => field.path === at);
      if (spec?.kind === "quantity") followed[at] = typedNumber(outline[figure as keyof Outline], spec);
    }
  }
  return followed;
}
