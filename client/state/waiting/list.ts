import { signal } from "@preact/signals";
import type { FieldError } from "../../../shared/model/api/errors.ts";
import type { CollectionName } from "../../../shared/model/collections.ts";
import { tried } from "../browserStore.ts";

/** Why the server did not take a record. */
export interface Refusal {
  readonly status: number;
  readonly message: string;
  readonly fields: readonly FieldError[];
}

/** A record that was saved, or deleted, and is not known to be so in the book. */
export interface Waiting {
  /** under which it is sent: the server stores once what comes twice under one key */
  readonly key: string;
  readonly collection: CollectionName;
  /** the record that it corrects, at the revision that was corrected; null adds one */
  readonly before: { readonly id: string; readonly revision: number } | null;
  /** what is stored; of a deletion, what the record said */
  readonly data: Readonly<Record<string, unknown>>;
  /** the record is to be deleted */
  readonly deletes?: true;
  /** when it was saved [ms since 1970] */
  readonly savedAt: number;
  /** what went out under the key and got no answer, the first time: it may be in the book. Null while nothing did */
  readonly sent: { readonly data: Waiting["data"]; readonly at: number } | null;
  /** null while it waits */
  readonly refusal: Refusal | null;
}

/** Another number where the shape changes. */
const START = "gripcurve waiting 1 ";

/** @returns the address under which is kept what is typed over it and not saved yet */
export const draftOfWaiting = ({ key }: Waiting): string => `waiting/${key}`;

const storeKeyOf = (key: string): string => START + key;

function parsed(text: string | null): Waiting | null {
  try {
    const item: unknown = JSON.parse(text ?? "null");
    const isWaiting = typeof item === "object" && item !== null && "key" in item && "data" in item;
    return isWaiting ? (item as Waiting) : null;
  } catch (error) {
    if (error instanceof SyntaxError) return null;
    throw error;
  }
}

function readAll(): Waiting[] {
  const keys = Array.from({ length: localStorage.length }, (_, i) => localStorage.key(i) ?? "");
  const items = keys
    .filter((key) => key.startsWith(START))
    .map((key) => parsed(localStorage.getItem(key)))
    .filter((item) => item !== null);
  return items.sort((a, b) => a.savedAt - b.savedAt || (a.key < b.key ? -1 : 1));
}

const stored = (): readonly Waiting[] => tried(readAll, []);

/** What waits in this browser, in the order in which it was saved. */
export const waiting = signal<readonly Waiting[]>([]);

/** Reads what waits, now and whenever another tab changes it. */
export function followWaiting(): void {
  waiting.value = stored();
  addEventListener("storage", (event) => {
    const { key } = event as StorageEvent;
    if (key === null || key.startsWith(START)) waiting.value = stored();
  });
}

/** @returns what waits under a key, also where another tab changed it just now; null where nothing does any more */
export const waitingUnder = (key: string): Waiting | null =>
  tried(() => parsed(localStorage.getItem(storeKeyOf(key))), null);

/** @returns what waits to correct a record, the last; null where nothing does */
export const waitingFor = (collection: CollectionName, id: string): Waiting | null =>
  waiting.value.findLast(
    (item) => item.collection === collection && item.before?.id === id && !item.deletes,
  ) ?? null;

/** @returns whether the deletion of a record waits */
export const deletionWaits = (collection: CollectionName, id: string): boolean =>
  waiting.value.some(
    (item) => item.collection === collection && item.before?.id === id && item.deletes === true,
  );

/** Keeps a record until it is sent, over the end of the page and of the browser. @returns false where the browser keeps nothing */
export function putWaiting(item: Waiting): boolean {
  const isKept = tried(() => {
    localStorage.setItem(storeKeyOf(item.key), JSON.stringify(item));
    return true;
  }, false);
  if (isKept) waiting.value = stored();
  return isKept;
}

/** It is in the book, or discarded. */
export function dropWaiting(key: string): void {
  tried(() => localStorage.removeItem(storeKeyOf(key)), undefined);
  waiting.value = stored();
}
