import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { whileVisible } from "#client/state/whileVisible.ts";

/** A page that can be hidden, kept by the browser, and gone back to. */
function stubPage() {
  const page = new EventTarget();
  const document = Object.assign(new EventTarget(), { visibilityState: "visible" });
  vi.stubGlobal("document", document);
  vi.stubGlobal("addEventListener", page.addEventListener.bind(page));
  vi.stubGlobal("removeEventListener", page.removeEventListener.bind(page));
  const turn = (state: "visible" | "hidden") => {
    document.visibilityState = state;
    document.dispatchEvent(new Event("visibilitychange"));
  };
  return { turn, fire: (name: string) => page.dispatchEvent(new Event(name)) };
}

let page: ReturnType<typeof stubPage>;
beforeEach(() => {
  page = stubPage();
});
afterEach(() => {
  vi.unstubAllGlobals();
});

function started() {
  const end = vi.fn();
  const start = vi.fn(() => end);
  const stop = whileVisible(start);
  return { start, end, stop };
}

describe("what runs while the page is visible", () => {
  it("ends when the page is hidden, and starts anew when it is shown", () => {
    const { start, end } = started();
    page.turn("hidden");
    expect([start.mock.calls.length, end.mock.calls.length]).toEqual([1, 1]);
    page.turn("visible");
    expect([start.mock.calls.length, end.mock.calls.length]).toEqual([2, 1]);
  });

  it("ends when the page is left, and starts anew when it is gone back to", () => {
    const { start, end } = started();
    page.fire("pagehide");
    expect(end).toHaveBeenCalledTimes(1);
    page.fire("pageshow");
    expect(start).toHaveBeenCalledTimes(2);
  });

  it("starts once, however often the page is said to be shown", () => {
    const { start, end } = started();
    page.fire("pageshow");
    page.turn("visible");
    expect(start).toHaveBeenCalledTimes(1);
    expect(end).not.toHaveBeenCalled();
  });

  it("in a page that opens hidden, starts only when it is shown", () => {
    page.turn("hidden");
    const { start } = started();
    expect(start).not.toHaveBeenCalled();
    page.turn("visible");
    expect(start).toHaveBeenCalledTimes(1);
  });

  it("stopped, ends and never starts again", () => {
    const { start, end, stop } = started();
    stop();
    page.turn("visible");
    page.fire("pageshow");
    expect([start.mock.calls.length, end.mock.calls.length]).toEqual([1, 1]);
  });
});
