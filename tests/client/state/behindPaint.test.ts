import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { behindPaint } from "#client/state/behindPaint.ts";

/** A page whose frames come when the test says. */
function page(visibilityState: "visible" | "hidden") {
  const frames = new Map<number, () => void>();
  vi.stubGlobal("document", { visibilityState });
  vi.stubGlobal("requestAnimationFrame", (frame: () => void) => frames.set(frames.size + 1, frame).size);
  vi.stubGlobal("cancelAnimationFrame", (id: number) => frames.delete(id));
  return () => {
    for (const frame of frames.values()) frame();
    frames.clear();
  };
}

const message = () => new Promise((resolve) => setImmediate(resolve));

describe("what waits for the paint", () => {
  beforeEach(() => {
    vi.useFakeTimers({ toFake: ["setTimeout", "clearTimeout"] });
  });
  afterEach(() => {
    vi.useRealTimers();
    vi.unstubAllGlobals();
  });

  it("on a page in sight whose frame comes late: waits for it, and for the task behind it", async () => {
    const frame = page("visible");
    const act = vi.fn();
    behindPaint(act);
    vi.advanceTimersByTime(500);
    expect(act).not.toHaveBeenCalled();
    frame();
    expect(act).not.toHaveBeenCalled();
    await vi.waitFor(async () => {
      await message();
      expect(act).toHaveBeenCalledTimes(1);
    });
    vi.advanceTimersByTime(5_000);
    expect(act).toHaveBeenCalledTimes(1);
  });

  it("on a page in sight that gets no frame at all: is done after a second, once", async () => {
    const frame = page("visible");
    const act = vi.fn();
    behindPaint(act);
    vi.advanceTimersByTime(1_000);
    frame();
    await message();
    expect(act).toHaveBeenCalledTimes(1);
  });

  it("given up before the frame: is never done", async () => {
    const frame = page("visible");
    const act = vi.fn();
    behindPaint(act)();
    frame();
    await message();
    vi.advanceTimersByTime(5_000);
    expect(act).not.toHaveBeenCalled();
  });

  it("out of sight: waits for no frame", () => {
    page("hidden");
    const act = vi.fn();
    behindPaint(act);
    vi.advanceTimersByTime(1);
    expect(act).toHaveBeenCalledTimes(1);
  });
});
