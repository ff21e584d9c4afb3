import type { News } from "./stream.ts";

/** A page's end of the hub: {@link MessagePort}, or a stand-in. */
export type Tab = Pick<MessagePort, "postMessage" | "onmessage">;

/** What a page posts to the hub before it goes. */
export const LEAVE = "leave";

/** Shares one event stream among all pages of a browser; the stream is open while a page follows it. */
export class Hub {
  private readonly tabs = new Set<Tab>();
  private connected: boolean | null = null;
  private end: (() => void) | null = null;

  constructor(private readonly follow: (report: (news: News) => void) => () => void) {}

  join(tab: Tab): void {
    this.tabs.add(tab);
    tab.onmessage = ({ data }: MessageEvent) => {
      if (data === LEAVE) this.leave(tab);
    };
    if (this.connected !== null) tab.postMessage({ connected: this.connected } satisfies News);
    this.end ??= this.follow((news) => this.report(news));
  }

  private leave(tab: Tab): void {
    this.tabs.delete(tab);
    if (this.tabs.size > 0) return;
    this.end?.();
    this.end = null;
    this.connected = null;
  }

  private report(news: News): void {
    if ("connected" in news) this.connected = news.connected;
    for (const tab of this.tabs) tab.postMessage(news);
  }
}
