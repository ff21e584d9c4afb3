import { changeEvent } from "../../shared/model/api/book.ts";
import type { Store } from "../store/store.ts";
import { type EventStream, openStream } from "./eventStream.ts";
import type { Route } from "./route.ts";

/** So that nothing on the way takes a quiet stream for a dead one [ms]. */
const KEEP_ALIVE = 25_000;
/** When a browser tries again after the stream broke [ms]. */
const RETRY = 2_000;

function follow(store: Store, stream: EventStream): void {
  stream.write(`retry: ${RETRY}`);
  const unsubscribe = store.feed.subscribe({
    next: (change) => stream.send("change", change),
    end: () => stream.end(),
  });
  const beat = setInterval(() => stream.write(": still here"), KEEP_ALIVE);
  beat.unref();
  stream.onClose(() => {
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
      serve: (request, response) => {
        const stream = openStream(request, response);
        if (stream) follow(store, stream);
      },
    },
  ];
}
