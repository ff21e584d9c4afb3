import type { StoredOf } from "../../../../shared/model/record.ts";
import { formatFixed } from "../../../../shared/units/format.ts";
import { ApiError } from "../../../state/api.ts";
import { saveRecord } from "../../../state/saveRecord.ts";
import { saveProblem } from "../../../state/sendRecord.ts";
import { formErrors } from "../record/fieldErrors.ts";
import type { FormModel } from "./model.ts";
import { questionsOn } from "./questions.ts";

/** Greatest body that the server takes [byte]. */
const GREATEST_BODY = 1e6;
const MEGABYTE = 1e6;

/** @returns why a body is too large to be sent, in words; null where it is not */
export function tooLarge(data: unknown): string | null {
  const size = new TextEncoder().encode(JSON.stringify(data)).length;
  if (size <= GREATEST_BODY) return null;
  return `This test takes ${formatFixed(size / MEGABYTE, 1)} MB to send, more than the 1 MB that the server takes. Save it as several tests with fewer rows each.`;
}

export type Outcome =
  | { readonly record: StoredOf<"tests"> }
  | { readonly changedMeanwhile: true }
  | { readonly waits: true }
  | { readonly discarded: true }
  | { readonly asked: true }
  | { readonly refused: true };

/** HTTP 412, Precondition Failed: another revision is in the book. */
export const STATUS_CHANGED = 412;

/**
 * Sends what is typed. Whatever is refused stays as it was typed, with the server's word beside each field.
 *
 * @param test - the test that is corrected; null for a new one
 * @param isConfirmed - numbers that may be slips are right as they are; else they are asked about, and nothing is sent
 */
export async function save(
  form: FormModel,
  test: StoredOf<"tests"> | null,
  isConfirmed: boolean,
): Promise<Outcome> {
  form.submitted.value = true;
  form.serverErrors.value = new Map();
  form.problem.value = null;
  const { data, errors, rowKeys } = form.read.value;
  if (errors.size > 0) return { refused: true };
  const large = tooLarge(data);
  if (large) {
    form.problem.value = large;
    return { refused: true };
  }
  const questions = isConfirmed ? [] : questionsOn(form, test?.id ?? null);
  form.questions.value = questions.length > 0 ? questions : null;
  if (questions.length > 0) return { asked: true };
  try {
    const revision = form.revision.value;
    const before = test && revision !== null ? { ...test, revision } : null;
    const saving = saveRecord("tests", before, data, form.waiting);
    form.saving.value = saving;
    const saved = await saving.outcome;
    if (!saved) return { discarded: true };
    return "waits" in saved ? saved : { record: saved.stored };
  } catch (error) {
    if (!(error instanceof ApiError)) throw error;
    if (error.status === STATUS_CHANGED) return { changedMeanwhile: true };
    const holeKeys = form.draft.value.holes.map((hole) => hole.key);
    form.serverErrors.value = formErrors(error.fields, { rowKeys, holeKeys });
    form.problem.value = saveProblem(error, test === null);
    return { refused: true };
  } finally {
    form.saving.value = null;
  }
}
