import type { CollectionName } from "../../shared/model/collections.ts";
import type { Stored } from "../../shared/model/record.ts";
import type { WithdrawalKey } from "../../shared/model/withdrawn.ts";
import { ApiError } from "./api.ts";
import { saveRecord } from "./saveRecord.ts";
import { waitingFor } from "./waiting/list.ts";

/** How a record stands after it was put out of use, or back. */
interface Withdrawn<T> {
  /** null where it could not be stored */
  readonly stored: Stored<T> | null;
  /** why it could not be stored; null also where it waits for the server */
  readonly problem: string | null;
}

/**
 * Puts a record out of use, or back into it: a test is struck out, a part or a build retired.
 *
 * @param name - its collection
 * @param record - as it stands in the book
 * @param reason - why; null puts it back into use
 */
export async function withdraw<T extends object>(
  name: CollectionName,
  record: Stored<T>,
  reason: string | null,
): Promise<Withdrawn<T>> {
  const key: WithdrawalKey = name === "tests" ? "struckOut" : "retired";
  // What waits to correct it is corrected in turn.
  const item = waitingFor(name, record.id);
  const { [key]: _before, ...data } = (item?.data ?? record.data) as Record<string, unknown>;
  const now = reason === null ? data : { ...data, [key]: reason };
  const over = { ...record, revision: item?.before?.revision ?? record.revision };
  try {
    const saved = await saveRecord<T>(name, over, now, item).outcome;
    return { stored: saved && "stored" in saved ? saved.stored : null, problem: null };
  } catch (error) {
    if (!(error instanceof ApiError)) throw error;
    return { stored: null, problem: error.message };
  }
}
