import { rm } from "node:fs/promises";
import { join } from "node:path";
import type { Response } from "express";
import { z } from "zod";
import { archive, bookState } from "../../shared/model/api/book.ts";
import { bookText } from "../store/bookText.ts";
import type { Store } from "../store/store.ts";
import { tempFolder } from "../tempFolder.ts";
import type { Threads } from "../threads/threads.ts";
import { stateOf } from "./bench.ts";
import { fileOf, parsed, type Route } from "./route.ts";
import { sendPieces } from "./sendPieces.ts";
import type { Service } from "./service.ts";

/** A book of a hundred thousand tests is some hundred million [byte]. */
const ARCHIVE_LIMIT = 1_000_000_000;

/** How long an export waits for predictions that are still owed [ms]. */
const PATIENCE = 5_000;

const importQuery = z.strictObject({
  replace: z
    .enum(["true", "false"])
    .default("false")
    .describe("whether a book that holds records may be replaced; a copy of it is kept"),
});

function exportRoute({ store: { file }, clock, foretelling }: Service): Route {
  return {
    method: "get",
    path: "/archive",
    tag: "archive",
    summary: "The whole bench book as one JSON document, earlier states included",
    streams: true,
    responses: { 200: { description: "the book", schema: archive } },
    refusals: [503],
    serve: async (request, response) => {
      const exportedAt = clock().toISOString();
      response.attachment(`gripcurve-${exportedAt.slice(0, 10)}.json`);
      if (request.method === "HEAD") response.end();
      else {
        await foretelling.settled(PATIENCE);
        await sendPieces(bookText(file, exportedAt), response);
      }
    },
  };
}

function importRoute(store: Store, clock: () => Date, threads: Threads): Route {
  return {
    method: "post",
    path: "/archive",
    tag: "archive",
    summary: "Take in a whole bench book, all or nothing",
    body: archive,
    takesFile: true,
    query: importQuery,
    bodyLimit: ARCHIVE_LIMIT,
    responses: { 201: { description: "taken in", schema: bookState } },
    refusals: [409, 422, 429, 503, 507],
    serve: async (request, response) => {
      const { replace } = parsed(importQuery, request.query);
      const change = { kind: "archive", path: fileOf(request), replace: replace === "true" } as const;
      const copy = await threads.run("whole", { file: store.file, at: clock(), change });
      store.announce("loaded");
      response.status(201).json(stateOf(store, copy));
    },
  };
}

/** Copies the database while it is in use, sends the copy, removes it. */
async function sendBackup(store: Store, name: string, response: Response): Promise<void> {
  const folder = tempFolder("backup");
  try {
    const file = join(folder, name);
    await store.backup(file);
    await new Promise<void>((resolve, reject) => {
      response.download(file, name, (error) => (error ? reject(error) : resolve()));
    });
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

function backupRoute(store: Store, clock: () => Date): Route {
  return {
    method: "get",
    path: "/backup",
    tag: "archive",
    summary: "A consistent copy of the database file, taken while the server runs",
    responses: { 200: { description: "an SQLite database", contentType: "application/vnd.sqlite3" } },
    refusals: [503, 507],
    serve: async (request, response) => {
      const name = `gripcurve-${clock().toISOString().slice(0, 10)}.db`;
      response.attachment(name).type("application/vnd.sqlite3");
      // How long the copy is only making it would show: headers alone are not worth one.
      if (request.method === "HEAD") response.end();
      else await sendBackup(store, name, response);
    },
  };
}

/** The book as a whole, in and out. */
export function archiveRoutes(service: Service): Route[] {
  const { store, clock, threads } = service;
  return [exportRoute(service), importRoute(store, clock, threads), backupRoute(store, clock)];
}
