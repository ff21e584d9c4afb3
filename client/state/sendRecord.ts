import type { CollectionName } from "../../shared/model/collections.ts";
import type { Stored } from "../../shared/model/record.ts";
import { ApiError, api } from "./api.ts";
import { drop, keep } from "./book.ts";
import { notice } from "./notice.ts";
import { newKey } from "./waiting/key.ts";
import { wasWritten } from "./write.ts";

/** A record on its way to the server. */
export interface Sending<T> {
  /** the record as it was stored, and is in the book on the screen; null where it was discarded. Rejects with {@link ApiError} */
  readonly outcome: Promise<Stored<T> | null>;
  /** The record must not be stored: what the server stores all the same is taken back. */
  readonly discard: () => void;
}

const PERHAPS_NOT_DISCARDED = "What you discarded may be in the book all the same: look for it in the list.";

/** Deletes what was added, or puts back what was corrected. */
async function takeBack<T>(name: CollectionName, before: Stored<T> | null, stored: Stored<T>): Promise<void> {
  const path = `/${name}/${encodeURIComponent(stored.id)}`;
  try {
    if (before) return keep(name, await api.put<Stored<T>>(path, before.data, stored.revision));
    await api.remove(path, stored.revision);
    drop(name, stored.id);
  } catch (error) {
    if (!(error instanceof ApiError)) throw error;
    notice.value = `What you discarded was stored and can't be taken back. ${error.message}`;
  }
}

/**
 * Sends a record and keeps it in the book on the screen. Until the answer comes it can be discarded.
 *
 * @param name - its collection
 * @param before - the record that it corrects, at the revision that was corrected; null adds one
 * @param data - what is stored
 * @param key - under which the server stores it once, however often it is sent
 */
export function sendRecord<T>(
  name: CollectionName,
  before: Stored<T> | null,
  data: unknown,
  key = newKey(),
): Sending<T> {
  let discarded = false;
  const send = () =>
    before
      ? api.put<Stored<T>>(`/${name}/${encodeURIComponent(before.id)}`, data, before.revision, { key })
      : api.post<Stored<T>>(`/${name}`, data, { key });
  const run = async () => {
    try {
      const stored = await send();
      if (discarded) {
        await takeBack(name, before, stored);
        return null;
      }
      wasWritten(name, before, stored);
      return stored;
    } catch (error) {
      if (!(discarded && error instanceof ApiError)) throw error;
      // A refusal stored nothing; without an answer nobody knows.
      if (error.status === 0) notice.value = `${error.message} ${PERHAPS_NOT_DISCARDED}`;
      return null;
    }
  };
  return {
    outcome: run(),
    discard: () => {
      discarded = true;
    },
  };
}

/** Code of a save that got no answer, in a browser that keeps nothing. */
export const NOT_KEPT = "not-kept";

const KEPT = "What you typed is kept.";
const PERHAPS_STORED = "It may be in the book all the same: look in the list before you save it again.";

/**
 * What a form says of a save that failed.
 *
 * @param isNew - whether a record was added, so that saving again may add it twice
 */
export function saveProblem(error: ApiError, isNew: boolean): string {
  if (error.status !== 0) return error.message;
  const kept = error.code === NOT_KEPT ? "" : KEPT;
  return [error.message, kept, isNew && error.code !== "unreachable" ? PERHAPS_STORED : ""]
    .filter(Boolean)
    .join(" ");
}
