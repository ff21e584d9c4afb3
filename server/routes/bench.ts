import { z } from "zod";
import { type BookState, bookState, deletionPage } from "../../shared/model/api/book.ts";
import { shownUnits } from "../../shared/model/shownUnits.ts";
import type { Store } from "../store/store.ts";
import { LINK, nextLink, paging } from "./listQuery.ts";
import { type Route, route } from "./route.ts";
import type { Service } from "./service.ts";

export const stateOf = (store: Store, backup: string | null = null): BookState => ({
  demo: store.isDemo(),
  counts: store.counts(),
  units: store.units(),
  backup,
  written: store.written(),
});

const deletionQuery = z.strictObject(paging);

/** What was deleted, the last first; each can come back. */
function deletedRoute(store: Store): Route {
  return route({
    method: "get",
    path: "/deleted",
    tag: "bench",
    summary: "List what was deleted from any collection, the last first",
    query: deletionQuery,
    responses: { 200: { description: "one page", schema: deletionPage, headers: LINK } },
    refusals: [503],
    answer: ({ query }) => {
      const page = store.deletions.page(query.limit, query.cursor);
      return { status: 200, body: page, headers: nextLink("/deleted", query, page.next) };
    },
  });
}

/** Numbers and sentences of the API stay metric: it is the pages that show these. */
function unitsRoute(store: Store): Route {
  return route({
    method: "put",
    path: "/bench/units",
    tag: "bench",
    summary: "Choose in which units the pages show each quantity of this book",
    body: shownUnits,
    responses: { 200: { description: "chosen", schema: bookState } },
    refusals: [422, 503, 507],
    answer: ({ body }) => {
      store.showIn(body);
      return { status: 200, body: stateOf(store) };
    },
  });
}

/** The state of the book, an empty bench to begin with, and the demo. */
export function benchRoutes({ store, clock, threads }: Service): Route[] {
  const { file } = store;
  return [
    deletedRoute(store),
    route({
      method: "get",
      path: "/bench",
      tag: "bench",
      summary: "Whether the book holds the demo, and how many records of each collection",
      responses: { 200: { description: "the state", schema: bookState } },
      refusals: [503],
      answer: () => ({ status: 200, body: stateOf(store) }),
    }),
    unitsRoute(store),
    route({
      method: "post",
      path: "/bench/empty",
      tag: "bench",
      summary: "Start an empty bench; a copy of the data file is kept",
      responses: { 200: { description: "emptied", schema: bookState } },
      refusals: [429, 503, 507],
      answer: async () => {
        const copy = await threads.run("whole", { file, at: clock(), change: { kind: "empty" } });
        store.announce("emptied");
        return { status: 200, body: stateOf(store, copy) };
      },
    }),
    route({
      method: "post",
      path: "/bench/demo",
      tag: "bench",
      summary: "Load the invented demo into an empty bench",
      responses: { 201: { description: "loaded", schema: bookState } },
      refusals: [409, 429, 503, 507],
      answer: async () => {
        const copy = await threads.run("whole", { file, at: clock(), change: { kind: "demo" } });
        store.announce("loaded");
        return { status: 201, body: stateOf(store, copy) };
      },
    }),
  ];
}
