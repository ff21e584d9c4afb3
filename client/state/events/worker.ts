import { Hub } from "./hub.ts";
import { followStream } from "./stream.ts";

/** The shared worker: the one place of a browser that follows the event stream, for all of its pages. */
const hub = new Hub(followStream);

addEventListener("connect", (event) => {
  for (const port of (event as MessageEvent).ports) hub.join(port);
});
