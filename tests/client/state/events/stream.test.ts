import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { followStream, type News } from "#client/state/events/stream.ts";

/** A browser's event stream, as far as {@link followStream} uses it. */
class Source extends EventTarget {
  static readonly CLOSED = 2;
  static opened: Source[] = [];
  readyState = 0;
  constructor(readonly url: string) {
    super();
    Source.opened.push(this);
  }
  close(): void {
    this.readyState = Source.CLOSED;
  }
  fail(readyState: number): void {
    this.readyState = readyState;
    this.dispatchEvent(new Event("error"));
  }
}

beforeEach(() => {
  Source.opened = [];
  vi.useFakeTimers();
  vi.stubGlobal("EventSource", Source);
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

function followed() {
  const heard: News[] = [];
  const end = followStream((news) => heard.push(news));
  return { heard, end, source: Source.opened[0] };
}

const CONNECTING = 0;

describe("the followed event stream", () => {
  it("reports the connection and each change", () => {
    const { heard, source } = followed();
    const change = { collection: "tests", id: "t", revision: 1, change: "created" };
    source.dispatchEvent(new Event("open"));
    source.dispatchEvent(new MessageEvent("change", { data: JSON.stringify(change) }));
    expect(heard).toEqual([{ connected: true }, { change }]);
  });

  it("after a break that the browser mends itself stays with its one stream", () => {
    const { heard, source } = followed();
    source.fail(CONNECTING);
    vi.advanceTimersByTime(60_000);
    expect(heard).toEqual([{ connected: false }]);
    expect(Source.opened).toHaveLength(1);
  });

  it("given up by the browser is opened again", () => {
    const { heard, source } = followed();
    source.fail(Source.CLOSED);
    vi.advanceTimersByTime(60_000);
    expect(Source.opened).toHaveLength(2);
    Source.opened[1].dispatchEvent(new Event("open"));
    expect(heard).toEqual([{ connected: false }, { connected: true }]);
  });

  it("ended while it waits to open again opens no more", () => {
    const { end, source } = followed();
    source.fail(Source.CLOSED);
    end();
    vi.advanceTimersByTime(60_000);
    expect(Source.opened).toHaveLength(1);
    expect(source.readyState).toBe(Source.CLOSED);
  });
});
