import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { onTestFinished } from "vitest";
import type { Page } from "#server/store/listing.ts";
import { openStore, type Store } from "#server/store/store.ts";

/** A folder that goes when the test ends. */
export function freshFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), "gripcurve-"));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** An empty book in a file of its own, closed when the test ends. */
export function freshStore(file = join(freshFolder(), "book.db")): Store {
  const store = openStore(file, new Date("2026-03-01T08:00:00Z"));
  onTestFinished(() => store.close());
  return store;
}

/** @returns the ids of a page's records, in its order */
export const idsOf = ({ items }: Page): string[] =>
  (JSON.parse(`[${Buffer.from(items).toString()}]`) as { id: string }[]).map(({ id }) => id);

/** A clock that moves on by a second at each look. */
export function steppingClock(start = "2026-03-01T08:00:00Z"): () => Date {
  let now = Date.parse(start);
  return () => {
    now += 1000;
    return new Date(now);
  };
}
