import type { CollectionName } from "../../shared/model/collections.ts";
import type { Stored } from "../../shared/model/record.ts";
import { api } from "./api.ts";
import { drop, keep } from "./book.ts";
import { noteStep } from "./undo/stack.ts";

const pathOf = (name: CollectionName, id: string): string => `/${name}/${encodeURIComponent(id)}`;

/** What a record is called. */
function calledOf(data: unknown): string {
  const { name, title, kind, date } = data as Readonly<Record<string, unknown>>;
  const said = name || title;
  return said ? `“${String(said)}”` : [kind, date].filter(Boolean).join(" of ");
}

/** Stores a new record, and shows it. @throws {ApiError} */
export async function addRecord<T>(name: CollectionName, data: unknown): Promise<Stored<T>> {
  const stored = await api.post<Stored<T>>(`/${name}`, data);
  wasWritten(name, null, stored);
  return stored;
}

/** Stores what a record says now, and shows it. @throws {ApiError} 412 where it was changed meanwhile */
export async function correctRecord<T>(
  name: CollectionName,
  before: Stored<unknown>,
  data: unknown,
): Promise<Stored<T>> {
  const stored = await api.put<Stored<T>>(pathOf(name, before.id), data, before.revision);
  wasWritten(name, before, stored);
  return stored;
}

/**
 * Deletes a record, here and on the screen; it can be brought back.
 *
 * @param key - under which the server does it once, however often it is asked
 * @throws {ApiError}
 */
export async function removeRecord(
  name: CollectionName,
  record: Stored<unknown>,
  key?: string,
): Promise<void> {
  await api.remove(pathOf(name, record.id), record.revision, { key });
  wasDeleted(name, record);
}

/** Takes a record that was deleted off the screen, so that it can be undone. */
export function wasDeleted(
  name: CollectionName,
  { id, revision, data }: Pick<Stored<unknown>, "id" | "revision" | "data">,
): void {
  drop(name, id);
  noteStep({ collection: name, id, name: calledOf(data), before: revision, after: null }, revision);
}

/** Shows a record that was written, so that it can be undone. */
export function wasWritten(
  name: CollectionName,
  before: Pick<Stored<unknown>, "revision"> | null,
  stored: Stored<unknown>,
): void {
  keep(name, stored);
  const { id, revision, data } = stored;
  const step = { collection: name, id, name: calledOf(data), after: revision };
  noteStep({ ...step, before: before?.revision ?? null }, revision);
}
