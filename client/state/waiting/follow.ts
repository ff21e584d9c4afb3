import { effect } from "@preact/signals";
import { connected } from "../events.ts";
import { followWaiting, waiting } from "./list.ts";
import { sendWaiting } from "./send.ts";

/** How often what waits is tried again although nothing says that the server is back [ms]. */
const AGAIN = 15_000;

/** Follows what waits in this browser, and sends it as soon as the server is there. */
export function startWaiting(): void {
  followWaiting();
  effect(() => {
    if (connected.value) void sendWaiting();
  });
  addEventListener("online", () => void sendWaiting());
  setInterval(() => {
    if (waiting.peek().length > 0 && document.visibilityState !== "hidden") void sendWaiting();
  }, AGAIN);
}
