import type { Question } from "../../../ui/AskBeforeSaving.tsx";
import type { FormModel } from "../forms/model.ts";
import { questionsOn } from "../forms/questions.ts";
import { save } from "../forms/save.ts";
import { type ImportModel, keyOf } from "./model.ts";
import { roleLabel } from "./roles.ts";

/** Shows in the one form on the screen what was wrong in the test that was sent; its rows are named by their lines. */
function showRefusal(model: ImportModel, sent: FormModel): void {
  const lines = new Map(model.points.value.good.map(({ row, line }) => [row.key, line]));
  const refused = new Map<number, string>();
  const said = [...sent.shown.value].map(([path, message]): [string, string] => {
    const [head, key, column] = path.split(".");
    const line = head === "rows" && key !== undefined ? lines.get(Number(key)) : undefined;
    if (line === undefined) return [path, message];
    const name = column ? roleLabel(model.kind, column) : null;
    refused.set(line, [refused.get(line), name ? `${name}: ${message}` : message].filter(Boolean).join("; "));
    return [name ? `line ${line}, ${name}` : `line ${line}`, message];
  });
  model.form.submitted.value = true;
  model.form.serverErrors.value = new Map(said);
  model.form.problem.value = sent.problem.value;
  model.refused.value = refused;
}

/** @returns the first test in which something is wrong before it is sent; null where none is */
function firstWrong(forms: readonly FormModel[]): FormModel | null {
  return forms.find((form) => form.read.value.errors.size > 0) ?? null;
}

/** What may be a slip in what is sent, rows named by their lines, each column once: a unit that is wrong is wrong all the way down. */
export function questionsAbout(model: ImportModel, forms: readonly FormModel[]): Question[] {
  const lines = new Map(model.points.value.good.map(({ row, line }) => [row.key, line]));
  const all = forms.flatMap((form) => questionsOn(form, null));
  return all.map((question) => {
    const [head, key, column] = question.path.split(".");
    if (head !== "rows" || !column) return question;
    return { ...question, label: `Line ${lines.get(Number(key))}, ${roleLabel(model.kind, column)}` };
  });
}

/**
 * Sends what is not saved yet, test by test; nothing where one of them can't be right. What may be a slip was asked about before.
 *
 * @returns the last one's id; null where one was refused
 */
export async function sendAll(model: ImportModel, forms: readonly FormModel[]): Promise<string | null> {
  const wrong = firstWrong(forms);
  model.refused.value = new Map();
  let last: string | null = null;
  for (const form of wrong ? [wrong] : forms) {
    const saved = await save(form, null, true);
    if (!("record" in saved)) {
      showRefusal(model, form);
      return null;
    }
    model.saved.value = new Set([...model.saved.value, keyOf(form)]);
    last = saved.record.id;
  }
  return last;
}
