import type { Response } from "express";
import { changeEvent } from "../../shared/model/api/book.ts";
import type { Store } from "../store/store.ts";
import type { Route } from "./route.ts";

/** So that nothing on the way takes a quiet stream for a dead one [ms]. */
const KEEP_ALIVE = 25_000;
/** When a browser tries again after the stream broke [ms]. */
const RETRY = 2_000;

function stream(store: Store, response: Response): void {
  response.status(200).set({
    "Content-Type": "text/event-stream; charset=utf-8",
    "Cache-Control": "no-cache, no-transform",
    "X-Accel-Buffering": "no",
  });
  response.write(`retry: ${RETRY}\n\n`);
  const unsubscribe = store.feed.subscribe({
    next: (change) => response.write(`event: change\ndata: ${JSON.stringify(change)}\n\n`),
    end: () => response.end(),
  });
  const beat = setInterval(() => response.write(": still here\n\n"), KEEP_ALIVE);
  beat.unref();
  response.on("close", () => {
    clearInterval(beat);
    unsubscribe();
  });
}

/** Every write, told as it happens. */
export function eventRoutes(store: Store): Route[] {
  return [
    {
      method: "get",
      path: "/events",
      tag: "bench",
      summary: "Follow the changes to the book as server-sent events",
      responses: {
        200: {
          description: "a stream; each event named change carries this as its data",
          schema: changeEvent,
          contentType: "text/event-stream",
        },
      },
      serve: (_request, response) => stream(store, response),
    },
  ];
}
