import { backupContents, backupList, bookState } from "../../shared/model/api/book.ts";
import { listBackups } from "../store/backups.ts";
import { stateOf } from "./bench.ts";
import { type Route, route } from "./route.ts";
import type { Service } from "./service.ts";

/** Copies beside the data file: listed, looked into, restored. */
export function backupRoutes({ store, clock, threads }: Service): Route[] {
  const { file } = store;
  return [
    route({
      method: "get",
      path: "/backups",
      tag: "archive",
      summary: "List the copies that lie beside the data file, the latest first",
      responses: { 200: { description: "the copies", schema: backupList } },
      answer: () => ({ status: 200, body: { items: listBackups(file) } }),
    }),
    route({
      method: "get",
      path: "/backups/:id",
      tag: "archive",
      summary: "What a copy holds, checked as it would be before it is restored",
      responses: { 200: { description: "how many records of each collection", schema: backupContents } },
      refusals: [404, 422, 429, 503],
      answer: async ({ id }) => ({
        status: 200,
        body: await threads.run("backup", { file, name: id, at: clock() }),
      }),
    }),
    route({
      method: "post",
      path: "/backups/:id/restore",
      tag: "archive",
      summary: "Put a copy in the book's place; what it takes the place of is kept as a copy",
      responses: { 201: { description: "restored", schema: bookState } },
      refusals: [404, 422, 429, 503, 507],
      answer: async ({ id }) => {
        const change = { kind: "backup", name: id } as const;
        const copy = await threads.run("whole", { file, at: clock(), change });
        store.announce("loaded");
        return { status: 201, body: stateOf(store, copy) };
      },
    }),
  ];
}
