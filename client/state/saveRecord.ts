import type { CollectionName } from "../../shared/model/collections.ts";
import type { Stored } from "../../shared/model/record.ts";
import { ApiError } from "./api.ts";
import { connected } from "./events.ts";
import { NOT_KEPT, sendRecord } from "./sendRecord.ts";
import { newKey } from "./waiting/key.ts";
import { dropWaiting, putWaiting, type Waiting, waiting, waitingUnder } from "./waiting/list.ts";
import { savedAgain, sendNow, sendWaiting } from "./waiting/send.ts";
import { removeRecord } from "./write.ts";

/** What came of a save: stored, or kept on this device until the server answers; null where it was discarded. */
export type Saved<T> = { readonly stored: Stored<T> } | { readonly waits: true } | null;

/** A record that is being saved. */
export interface Saving<T> {
  /** rejects with {@link ApiError} */
  readonly outcome: Promise<Saved<T>>;
  /** The record must not be stored; what waited before it was saved anew waits on as it was. */
  readonly discard: () => void;
}

const NOWHERE_TO_WAIT =
  "It can't wait on this device: this browser's storage is full or switched off. Leave the page open, and save again once the server is back.";

/** Puts a record among those that wait. @throws {ApiError} where the browser keeps nothing */
function wait(item: Waiting, why: string): { readonly waits: true } {
  if (!putWaiting(item)) throw new ApiError(0, NOT_KEPT, `${why} ${NOWHERE_TO_WAIT}`.trim());
  void navigator.storage?.persist?.();
  return { waits: true };
}

/** Saves anew what waits already. Gone from the list since its form opened, it was sent: that is asked for under its key, and corrected. */
function saveWaiting<T>(opened: Waiting, before: Waiting["before"], data: Waiting["data"]): Saving<T> {
  const sent = opened.sent ?? { data: opened.data, at: opened.savedAt };
  const item = waitingUnder(opened.key) ?? { ...opened, sent };
  const next = savedAgain({ ...item, before }, data);
  const run = async (): Promise<Saved<T>> => {
    wait(next, "");
    const made = await sendNow(next.key);
    if ("waits" in made) return made;
    if ("deleted" in made) throw new Error("What is saved deletes nothing.");
    if ("stored" in made) return { stored: made.stored as Stored<T> };
    const { status, message, fields } = made.refused;
    throw new ApiError(status, "refused", message, fields);
  };
  const leave = () => {
    if (waitingUnder(next.key)) putWaiting(item);
  };
  return { outcome: run(), discard: leave };
}

/**
 * Saves a record: sends it as {@link sendRecord} does, and where no server answers it waits on this device.
 *
 * @param item - what waits already and is saved anew; null where nothing does
 */
export function saveRecord<T>(
  collection: CollectionName,
  before: Stored<T> | null,
  data: Waiting["data"],
  item: Waiting | null = null,
): Saving<T> {
  const at = before && { id: before.id, revision: before.revision };
  if (item) return saveWaiting(item, at, data);
  const key = newKey();
  const unsent = { key, collection, before: at, data, savedAt: Date.now(), sent: null, refusal: null };
  if (!connected.peek() && putWaiting(unsent)) {
    void sendWaiting();
    return { outcome: Promise.resolve({ waits: true }), discard: () => dropWaiting(key) };
  }
  const { outcome, discard } = sendRecord(collection, before, data, key);
  const run = async (): Promise<Saved<T>> => {
    try {
      const stored = await outcome;
      return stored && { stored };
    } catch (error) {
      if (!(error instanceof ApiError && error.status === 0)) throw error;
      return wait({ ...unsent, sent: { data, at: unsent.savedAt } }, error.message);
    }
  };
  return { outcome: run(), discard };
}

/**
 * Deletes a record; where no server answers, that waits on this device. What waited for the record before gives way.
 *
 * @throws {ApiError} where it is refused, or the browser keeps nothing
 */
export async function deleteRecord(
  collection: CollectionName,
  record: Stored<unknown>,
): Promise<{ readonly deleted: true } | { readonly waits: true }> {
  const { id, revision } = record;
  const data = record.data as Waiting["data"];
  const savedAt = Date.now();
  const before = { id, revision };
  const unsent = { key: newKey(), collection, before, data, deletes: true as const, savedAt };
  const item: Waiting = { ...unsent, sent: null, refusal: null };
  const own = waiting.peek().filter((each) => each.collection === collection && each.before?.id === id);
  for (const { key } of own) dropWaiting(key);
  if (!connected.peek() && putWaiting(item)) {
    void sendWaiting();
    return { waits: true };
  }
  try {
    await removeRecord(collection, record, item.key);
    return { deleted: true };
  } catch (error) {
    if (!(error instanceof ApiError && error.status === 0)) throw error;
    return wait({ ...item, sent: { data, at: savedAt } }, error.message);
  }
}
