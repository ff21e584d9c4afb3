import { tried } from "../browserStore.ts";

/** Another number where the shape changes. */
const NAME = "gripcurve book 1";
const STORE = "records";

/** @returns what a request of the database answers; null where the browser refuses it */
const answered = <T>(request: IDBRequest<T>): Promise<T | null> =>
  new Promise((resolve) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = (event) => {
      event.preventDefault();
      resolve(null);
    };
  });

/** @returns the browser's database, which may be switched off or full: null, and nothing is kept */
async function opened(): Promise<IDBDatabase | null> {
  if (!("indexedDB" in globalThis)) return null;
  const request = tried(() => indexedDB.open(NAME), null);
  if (!request) return null;
  request.onupgradeneeded = () => request.result.createObjectStore(STORE);
  return answered(request);
}

/** Something kept, under its key. */
export type Entry = readonly [key: string, value: unknown];

/** @returns all that is kept, by key; empty where nothing is */
export async function readEntries(): Promise<ReadonlyMap<string, unknown>> {
  const database = await opened();
  if (!database) return new Map();
  const store = database.transaction(STORE).objectStore(STORE);
  const [keys, values] = await Promise.all([answered(store.getAllKeys()), answered(store.getAll())]);
  database.close();
  return new Map(keys?.map((key, i) => [String(key), values?.[i]]));
}

/** @returns what is kept under some keys, in their order; undefined where nothing is */
export async function readUnder(keys: readonly string[]): Promise<readonly unknown[]> {
  const database = await opened();
  if (!database) return keys.map(() => undefined);
  const store = database.transaction(STORE).objectStore(STORE);
  const values = await Promise.all(keys.map((key) => answered(store.get(key))));
  database.close();
  return values.map((value) => value ?? undefined);
}

/**
 * Keeps these and nothing else, in one step: all or none of it. What is kept already is not written again.
 *
 * @param entries - a key never means another value
 * @param anew - keys whose value may have changed all the same
 */
export async function keepEntries(entries: readonly Entry[], anew: ReadonlySet<string>): Promise<void> {
  const database = await opened();
  if (!database) return;
  const transaction = database.transaction(STORE, "readwrite");
  const store = transaction.objectStore(STORE);
  const over = new Promise<void>((resolve) => {
    for (const end of ["complete", "abort"]) transaction.addEventListener(end, () => resolve());
  });
  const kept = new Set((await answered(store.getAllKeys()))?.map(String));
  const wanted = new Set(entries.map(([key]) => key));
  for (const key of kept) if (!wanted.has(key)) store.delete(key);
  for (const [key, value] of entries) if (anew.has(key) || !kept.has(key)) store.put(value, key);
  await over;
  database.close();
}

/** Forgets all of it. */
export function forgetEntries(): void {
  if ("indexedDB" in globalThis) tried(() => indexedDB.deleteDatabase(NAME), undefined);
}
