import { randomUUID } from "node:crypto";
import { samples } from "#tests/server/support/records.ts";
import type { Acknowledged } from "./acknowledged.ts";

/** A request whose answer never came. */
export interface Unanswered {
  readonly key: string;
  readonly body: { readonly name: string };
}

export interface Written {
  readonly acknowledged: Acknowledged[];
  readonly unanswered: Unanswered[];
}

const SURFACES = "/api/v1/surfaces";

/** The connection broke, or the answer did. */
export const isGone = (error: unknown): boolean => error instanceof TypeError || error instanceof SyntaxError;

/** Adds a surface under a key. @returns its first state; null where the server refused */
export async function add(url: string, { key, body }: Unanswered): Promise<Acknowledged | null> {
  const headers = { "Content-Type": "application/json", "Idempotency-Key": key };
  const answer = await fetch(url + SURFACES, { method: "POST", headers, body: JSON.stringify(body) });
  const record = (await answer.json()) as Acknowledged;
  return answer.status === 201 ? record : null;
}

async function correct(url: string, { id }: Acknowledged, body: object): Promise<Acknowledged | null> {
  const headers = { "Content-Type": "application/json", "If-Match": '"1"' };
  const answer = await fetch(`${url}${SURFACES}/${id}`, {
    method: "PUT",
    headers,
    body: JSON.stringify(body),
  });
  const record = (await answer.json()) as Acknowledged;
  return answer.status === 200 ? record : null;
}

async function remove(url: string, { id, revision }: Acknowledged): Promise<Acknowledged | null> {
  const answer = await fetch(`${url}${SURFACES}/${id}`, { method: "DELETE" });
  await answer.arrayBuffer();
  return answer.status === 204 ? { id, revision, data: null } : null;
}

/** Adds, corrects and deletes without a pause until the server is gone; what the emptied book refuses isn't acknowledged. */
export async function writeUntilGone(url: string, written: Written): Promise<void> {
  for (;;) {
    const sent = { key: randomUUID(), body: { ...samples.surfaces, name: `Pane ${randomUUID()}` } };
    try {
      const added = await add(url, sent);
      if (!added) continue;
      written.acknowledged.push(added);
      const corrected = await correct(url, added, { ...sent.body, wheelFriction: 0.7 });
      if (!corrected) continue;
      written.acknowledged.push(corrected);
      const removed = Math.random() < 0.3 ? await remove(url, corrected) : null;
      if (removed) written.acknowledged.push(removed);
    } catch (error) {
      if (!isGone(error)) throw error;
      written.unanswered.push(sent);
      return;
    }
  }
}
