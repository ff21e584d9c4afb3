import type { BenchTest } from "../../../../shared/model/tests/index.ts";
import { currentBook } from "../../../state/book.ts";
import { forgetDraft, keptDraft } from "../../../state/drafts.ts";
import { draftOfWaiting, type Waiting } from "../../../state/waiting/list.ts";
import { formErrors } from "../record/fieldErrors.ts";
import { draftKind } from "../record/settledDraft.ts";
import { writeDraft } from "../record/writeDraft.ts";
import { createForm, type FormModel } from "./model.ts";
import { STATUS_CHANGED } from "./save.ts";

/**
 * The form of a test that waits for the server, as it was saved or as it was typed on since; what the server said of it
 * stands beside its fields.
 *
 * @param startOver - what was typed since is forgotten
 */
export function waitingForm(item: Waiting, startOver: boolean): FormModel {
  const address = draftOfWaiting(item);
  if (startOver) forgetDraft(address);
  const test = item.data as unknown as BenchTest;
  const kept = keptDraft(address, draftKind(test.kind));
  const draft = writeDraft(test, currentBook.peek() ?? undefined);
  const revision = kept ? kept.revision : (item.before?.revision ?? null);
  const form = { ...createForm(address, kept?.content ?? draft, revision, kept), waiting: item };
  if (item.refusal && !kept) {
    const keys = { rowKeys: draft.rows.map(({ key }) => key), holeKeys: draft.holes.map(({ key }) => key) };
    form.submitted.value = true;
    form.serverErrors.value = formErrors(item.refusal.fields, keys);
    // What was changed meanwhile is shown beside what is typed.
    if (item.refusal.status !== STATUS_CHANGED) form.problem.value = item.refusal.message;
  }
  return form;
}
