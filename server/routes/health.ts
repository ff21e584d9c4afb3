import { z } from "zod";
import type { Store } from "../store/store.ts";
import { version } from "../version.ts";
import { type Route, route } from "./route.ts";

const health = z.strictObject({
  status: z.literal("ok").describe("the server answers and its data file can be read"),
  version: z.string().describe("of the program"),
});

/** For whatever looks after the server: answers only where the data file can be read. */
export const healthRoute = (store: Store): Route =>
  route({
    method: "get",
    path: "/health",
    tag: "bench",
    summary: "Whether the server works",
    responses: { 200: { description: "it does", schema: health } },
    refusals: [503],
    answer: () => {
      store.isDemo();
      return { status: 200, body: { status: "ok", version }, headers: { "Cache-Control": "no-store" } };
    },
  });
