import { signal } from "@preact/signals";
import type { Stored } from "../../../shared/model/record.ts";
import { ApiError, api } from "../api.ts";
import { notice } from "../notice.ts";
import { wasDeleted, wasWritten } from "../write.ts";
import { newKey } from "./key.ts";
import { dropWaiting, putWaiting, type Refusal, type Waiting, waiting, waitingUnder } from "./list.ts";

const DAY = 24 * 3600 * 1000;
/** The server keeps a key for a week; a day of it is for clocks that differ [ms]. */
const KEY_IS_GOOD = 6 * DAY;
/** How long the server may take to say that it is there [ms]. */
const SHORT = 5_000;
const LOCK = "gripcurve waiting";

const PERHAPS_STORED =
  "It went to the server days ago and got no answer: it may be in the book. Look in the list. If it isn't there, open it here and save it again; if it is, discard it.";
const STORED_ALL_THE_SAME =
  "What you discarded was on its way already and is in the book: delete it there if it must not be.";

/** What was sent and is done in the book now, until its maker has read so. */
export const arrived = signal<readonly Waiting[]>([]);
/** why nothing can be sent although the server answers, in its words; null where nothing is known to be in the way */
export const sendingProblem = signal<string | null>(null);

/** What came of an attempt to send one record. */
export type Attempt =
  | { readonly stored: Stored<unknown> }
  | { readonly deleted: true }
  | { readonly refused: Refusal }
  | { readonly waits: true };

let turn: Promise<unknown> = Promise.resolve();

/** One tab at a time sends; where the browser can't see to that, one after another in this tab, and the keys do the rest. */
function inTurn<T>(work: () => Promise<T>): Promise<T> {
  if ("locks" in navigator) return navigator.locks.request(LOCK, work) as Promise<T>;
  const next = turn.then(work);
  turn = next.catch(() => undefined);
  return next;
}

/** @returns whether the server may have forgotten that it stored what was sent */
const isTooOld = ({ at }: { readonly at: number }): boolean => Date.now() - at > KEY_IS_GOOD;

const isSame = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

function write({ collection, before, key }: Waiting, data: Waiting["data"]): Promise<Stored<unknown>> {
  if (!before) return api.post(`/${collection}`, data, { key });
  return api.put(`/${collection}/${encodeURIComponent(before.id)}`, data, before.revision, { key });
}

/** HTTP 404, Not Found: somebody else deleted it. */
const GONE = 404;

/** Deletes a record; one that is gone already is deleted. */
async function remove({ collection, before, key, data }: Waiting): Promise<Attempt> {
  if (!before) throw new Error("Only a record of the book is deleted.");
  try {
    await api.remove(`/${collection}/${encodeURIComponent(before.id)}`, before.revision, { key });
  } catch (error) {
    if (!(error instanceof ApiError && error.status === GONE)) throw error;
  }
  wasDeleted(collection, { ...before, data });
  dropWaiting(key);
  return { deleted: true };
}

/** An answer that is about the record itself, and not about the server, the way to it, or who asks. */
const isAboutRecord = ({ status }: ApiError): boolean => [400, 404, 409, 412, 413, 422].includes(status);

function refuse(item: Waiting, { status, message, fields }: Refusal): Attempt {
  const refusal = { status, message, fields };
  putWaiting({ ...item, refusal });
  return { refused: refusal };
}

/** It is in the book, as it was sent: what was corrected here since goes out as a correction of it. */
async function arrive(item: Waiting, sent: Waiting["data"], record: Stored<unknown>): Promise<Attempt> {
  wasWritten(item.collection, item.before, record);
  const now = waitingUnder(item.key);
  dropWaiting(item.key);
  if (!now) notice.value = STORED_ALL_THE_SAME;
  if (!now || isSame(now.data, sent)) return { stored: record };
  const { id, revision } = record;
  const next = { ...now, key: newKey(), before: { id, revision }, sent: null, refusal: null };
  putWaiting(next);
  return attempt(next);
}

async function attempt(item: Waiting): Promise<Attempt> {
  if (item.sent && isTooOld(item.sent))
    return refuse(item, { status: 0, message: PERHAPS_STORED, fields: [] });
  const sent = item.sent ?? { data: item.data, at: Date.now() };
  putWaiting({ ...item, sent });
  try {
    if (item.deletes) return await remove(item);
    return await arrive(item, sent.data, await write(item, sent.data));
  } catch (error) {
    if (!(error instanceof ApiError)) throw error;
    const now = waitingUnder(item.key);
    if (error.status !== 0 && !isAboutRecord(error)) sendingProblem.value = error.message;
    if (!now || !isAboutRecord(error)) return { waits: true };
    // What was refused was not stored, now or before.
    const unsent = { ...now, sent: null };
    putWaiting(unsent);
    return isSame(now.data, sent.data) ? refuse(unsent, error) : attempt(unsent);
  }
}

async function isThere(): Promise<boolean> {
  try {
    await api.get("/health", { patience: SHORT });
    return true;
  } catch (error) {
    if (!(error instanceof ApiError)) throw error;
    if (error.status !== 0) sendingProblem.value = error.message;
    return false;
  }
}

/** Sends one record now, as far as the server is there. */
export const sendNow = (key: string): Promise<Attempt> =>
  inTurn(async () => {
    const item = waitingUnder(key);
    sendingProblem.value = null;
    return item && (await isThere()) ? attempt(item) : { waits: true };
  });

/** Sends all that waits, in the order in which it was saved, until one gets no answer. */
export const sendWaiting = (): Promise<void> =>
  inTurn(async () => {
    const isWaiting = ({ refusal }: Waiting) => refusal === null;
    if (!waiting.peek().some(isWaiting)) return;
    sendingProblem.value = null;
    if (!(await isThere())) return;
    for (const { key } of waiting.peek().filter(isWaiting)) {
      const item = waitingUnder(key);
      if (!item || !isWaiting(item)) continue;
      const made = await attempt(item);
      if ("waits" in made) return;
      if (!("refused" in made)) arrived.value = [...arrived.peek(), item];
    }
  });

/** @returns what waits, as it is saved anew; one that was sent too long ago counts as never sent: its maker has looked */
export function savedAgain(item: Waiting, data: Waiting["data"]): Waiting {
  const sent = item.sent && isTooOld(item.sent) ? null : item.sent;
  return { ...item, data, savedAt: Date.now(), sent, refusal: null };
}
