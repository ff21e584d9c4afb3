import { slipsOfTest } from "../../../../shared/book/slips/ofTest.ts";
import type { BenchTest } from "../../../../shared/model/tests/index.ts";
import { currentBook, hasTestsFor } from "../../../state/book.ts";
import type { Question } from "../../../ui/AskBeforeSaving.tsx";
import { labelOf } from "../record/fieldErrors.ts";
import { testsBeside } from "../running/useRunning.ts";
import type { FormModel } from "./model.ts";

/** The draft's own path of a record's: rows by their keys. */
function draftPath(path: string, rowKeys: readonly number[]): string {
  const [head, index, ...rest] = path.split(".");
  return head === "rows" ? [head, rowKeys[Number(index)], ...rest].join(".") : path;
}

function textAt({ draft }: FormModel, path: string): string {
  const { fields, rows } = draft.value;
  const [head, key, column] = path.split(".");
  if (head !== "rows") return fields[path] ?? "";
  return rows.find((row) => row.key === Number(key))?.cells[column] ?? "";
}

/** @returns numbers of a form that may be slips, beside the book without the test that it corrects */
export function questionsOn(form: FormModel, id: string | null): Question[] {
  const book = currentBook.peek();
  if (!book) return [];
  const others = id === null ? book : { ...book, tests: book.tests.filter((test) => test.id !== id) };
  const { data, rowKeys } = form.read.peek();
  // What is held against half of the tests would be asked about for nothing.
  if (!hasTestsFor(testsBeside(data))) return [];
  return slipsOfTest(others, data as unknown as BenchTest).map(({ path, why }) => {
    const own = draftPath(path, rowKeys);
    return { path: own, label: labelOf(own, form.draft.peek()), text: textAt(form, own), why };
  });
}
