import { signal } from "@preact/signals";
import { apply, reload } from "./book.ts";
import { LEAVE } from "./events/hub.ts";
import { followStream, type News } from "./events/stream.ts";
import { askVersion } from "./serverVersion.ts";
import { whileVisible } from "./whileVisible.ts";

/** false while the server can't be reached */
export const connected = signal(true);

/** How long the book's first reading waits for the stream; a stream that comes later has it read once more [ms]. */
const FIRST_NEWS = 500;

let isLate = false;
let tellFirst: () => void = () => {};
const first = new Promise<void>((resolve) => {
  tellFirst = resolve;
});

function receive(news: News): void {
  if ("change" in news) return void apply(news.change);
  tellFirst();
  if (news.connected) void askVersion();
  if (news.connected && (isLate || !connected.peek())) void reload();
  isLate = false;
  connected.value = news.connected;
}

/** A stream of this page's own. What was written while it was closed is read at once. */
function followAlone(): void {
  let missed = false;
  whileVisible(() => {
    if (missed) void reload();
    missed = true;
    return followStream(receive);
  });
}

function joinHub(): () => void {
  const worker = new SharedWorker(new URL("./events/worker.ts", import.meta.url), { type: "module" });
  worker.port.onmessage = ({ data }: MessageEvent<News>) => receive(data);
  worker.addEventListener("error", followAlone, { once: true });
  return () => {
    worker.port.postMessage(LEAVE);
    worker.port.close();
  };
}

/** The stream that all pages of the browser share. A page that was kept and is gone back to joins anew. */
function followTogether(): void {
  let leave = joinHub();
  addEventListener("pagehide", () => leave());
  addEventListener("pageshow", (event) => {
    if (!(event as PageTransitionEvent).persisted) return;
    leave = joinHub();
    void reload();
  });
}

/**
 * Follows what is written in the book, here or on another screen; reads the book anew after a break.
 *
 * @returns once the stream stands, or is known to be broken: what is read from then on misses no change
 */
export function startEvents(): Promise<void> {
  if ("SharedWorker" in globalThis) followTogether();
  else followAlone();
  const late = setTimeout(() => {
    isLate = true;
    tellFirst();
  }, FIRST_NEWS);
  return first.finally(() => clearTimeout(late));
}
