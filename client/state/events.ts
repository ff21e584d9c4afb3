import { signal } from "@preact/signals";
import type { BookState } from "../../shared/model/api/book.ts";
import { ApiError, api } from "./api.ts";
import { apply, reload, wasReadAt } from "./book.ts";
import { LEAVE } from "./events/hub.ts";
import { followStream, type News } from "./events/stream.ts";
import { askVersion } from "./serverVersion.ts";
import { whileVisible } from "./whileVisible.ts";

/** false while the server can't be reached */
export const connected = signal(true);

/** How long the server may take to say how the book stands [ms]. */
const SHORT = 1_000;

/** @returns what is another after each write to the book; null where the server doesn't say */
async function written(): Promise<string | null> {
  try {
    return (await api.get<BookState>("/bench", { patience: SHORT })).written;
  } catch (error) {
    if (!(error instanceof ApiError)) throw error;
    return null;
  }
}

/** The book is read before the stream stands: what was written until then was told to nobody. */
async function reloadIfWritten(): Promise<void> {
  const now = await written();
  if (now === null || !(await wasReadAt(now))) await reload();
}

let isFollowed = false;

function receive(news: News): void {
  if ("change" in news) return void apply(news.change);
  if (news.connected) void askVersion();
  if (news.connected && !connected.peek()) void reload();
  else if (news.connected && !isFollowed) void reloadIfWritten();
  isFollowed ||= news.connected;
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

/** Follows what is written in the book, here or on another screen; reads the book anew after a break, and where it was written before the stream stood. */
export function startEvents(): void {
  if ("SharedWorker" in globalThis) followTogether();
  else followAlone();
}
