import { slipsOfPart } from "../../../shared/book/slips/ofPart.ts";
import type { DataOf } from "../../../shared/model/record.ts";
import { currentBook } from "../../state/book.ts";
import type { Question } from "../../ui/AskBeforeSaving.tsx";
import { type FormState, fieldsOf } from "./draft.ts";
import type { FormSpec } from "./spec.ts";

/** What a field is called, a list's with the number of its row: "Diameter, row 2". */
function labelAt(form: FormSpec, path: string): string {
  for (const spec of fieldsOf(form)) {
    if (spec.path === path) return spec.label;
    if (spec.kind !== "list" || !path.startsWith(`${spec.path}.`)) continue;
    const [row, ...rest] = path.slice(spec.path.length + 1).split(".");
    const column = spec.columns.find((each) => each.path === rest.join("."));
    if (column) return `${column.label}, row ${Number(row) + 1}`;
  }
  return path;
}

/**
 * Numbers of a part's or a build's form that may be slips.
 *
 * @param form - which fields there are
 * @param state - what stands in them
 * @param data - what would be stored, SI
 */
export function questionsOn(form: FormSpec, state: FormState, data: object): Question[] {
  const book = currentBook.peek();
  if (!book) return [];
  return slipsOfPart(book, form.collection, data as DataOf<FormSpec["collection"]>).map(({ path, why }) => {
    return { path, label: labelAt(form, path), text: state.values[path] ?? "", why };
  });
}
