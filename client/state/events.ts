import { signal } from "@preact/signals";
import { apply, reload } from "./book.ts";
import { LEAVE } from "./events/hub.ts";
import { followStream, type News } from "./events/stream.ts";
import { askVersion } from "./serverVersion.ts";
import { whileVisible } from "./whileVisible.ts";

/** false while the server can't be reached */
export const connected = signal(true);

function receive(news: News): void {
  if ("change" in news) return void apply(news.change);
  if (news.connected) void askVersion();
  if (news.connected && !connected.peek()) void reload();
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

/** Follows what is written in the book, here or on another screen; reads the book anew after a break. */
export function startEvents(): void {
  if ("SharedWorker" in globalThis) followTogether();
  else followAlone();
}
