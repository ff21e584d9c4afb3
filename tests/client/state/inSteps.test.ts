import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { inSteps } from "#client/state/inSteps.ts";
import type { Steps } from "#shared/book/steps.ts";

/** By hand: a step takes as long as it says. */
let now = 0;

beforeEach(() => {
  now = 0;
  vi.spyOn(performance, "now").mockImplementation(() => now);
});
afterEach(() => {
  vi.restoreAllMocks();
});

function* steps(times: readonly number[], done: number[]): Steps<string> {
  for (const [i, time] of times.entries()) {
    now += time;
    done.push(i);
    yield;
  }
  return "whole";
}

/** What else waits for the page. */
function other(note: () => void): void {
  const { port1, port2 } = new MessageChannel();
  port1.onmessage = () => {
    port1.close();
    note();
  };
  port2.postMessage(null);
}

describe("work in steps", () => {
  it("that are long: lets what waits come between them, and gives what they come to", async () => {
    const done: number[] = [];
    let before = Number.NaN;
    other(() => {
      before = done.length;
    });
    expect(await inSteps(steps([20, 20, 20], done), () => true)).toBe("whole");
    expect(before).toBeLessThan(3);
    expect(done).toEqual([0, 1, 2]);
  });

  it("that are short together: is done without a pause", async () => {
    const done: number[] = [];
    const work = inSteps(steps([1, 1, 1], done), () => true);
    expect(done).toEqual([0, 1, 2]);
    expect(await work).toBe("whole");
  });

  it("that is no longer wanted: goes no further and comes to nothing", async () => {
    const done: number[] = [];
    expect(await inSteps(steps([20, 20, 20], done), () => false)).toBeNull();
    expect(done).toEqual([0]);
  });
});
