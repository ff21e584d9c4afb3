import { signal } from "@preact/signals";
import type { BookState } from "../../shared/model/api/book.ts";
import { ApiError, api } from "./api.ts";
import { apply, reload } from "./book.ts";
import { LEAVE } from "./events/hub.ts";
import { followStream, type News } from "./events/stream.ts";
import { askVersion } from "./serverVersion.ts";
import { whileVisible } from "./whileVisible.ts";

/** false while the server can't be reached */
export const connected = signal(true);

/** How long the book's first reading waits for the stream [ms]. */
const FIRST_NEWS = 500;

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

let isLate = false;
/** how the book stood before it was read without the stream; null where the server didn't say */
let before: Promise<string | null> = Promise.resolve(null);

/** What was written until the stream came was told to nobody. */
async function reloadIfWritten(): Promise<void> {
  const [then, now] = await Promise.all([before, written()]);
  if (then === null || then !== now) await reload();
}

let tellFirst: () => void = () => {};
const first = new Promise<void>((resolve) => {
  tellFirst = resolve;
});

function receive(news: News): void {
  if ("change" in news) return void apply(news.change);
  tellFirst();
  if (news.connected) void askVersion();
  if (news.connected && isLate) void reloadIfWritten();
  else if (news.connected && !connected.peek()) void reload();
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
 * @returns once the stream stands, is known to be broken, or is late: no change is missed of what is read from then on
 */
export function startEvents(): Promise<void> {
  if ("SharedWorker" in globalThis) followTogether();
  else followAlone();
  const late = setTimeout(() => {
    isLate = true;
    before = written();
    void before.then(tellFirst);
  }, FIRST_NEWS);
  return first.finally(() => clearTimeout(late));
}
