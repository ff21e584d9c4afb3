import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { keepDailyCopies } from "#server/dailyCopies.ts";
import type { Threads } from "#server/threads/threads.ts";

const HOUR = 3_600_000;

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

/** A server that makes copies, and what it was asked and said. */
function keeping(keep: number, answer: () => Promise<unknown> = async () => null) {
  const [asked, said]: [unknown[], string[]] = [[], []];
  const run = (name: string, input: unknown) => {
    asked.push([name, input]);
    return answer();
  };
  const threads = { count: 1, run, close: async () => {} } as unknown as Threads;
  const clock = () => new Date("2026-03-01T08:00:00Z");
  const end = keepDailyCopies(threads, { file: "book.db", clock, keep, log: (words) => said.push(words) });
  return { asked, said, end };
}

describe("the daily copies of a server", () => {
  it("that runs for three hours: are looked after a minute after its start and each hour, on a thread, until it ends", async () => {
    const { asked, end } = keeping(7);
    expect(asked).toEqual([]);
    await vi.advanceTimersByTimeAsync(3 * HOUR);
    expect(asked).toHaveLength(4);
    expect(asked[0]).toEqual(["daily", { file: "book.db", at: new Date("2026-03-01T08:00:00Z"), keep: 7 }]);
    end();
    await vi.advanceTimersByTimeAsync(3 * HOUR);
    expect(asked).toHaveLength(4);
  });

  it("with none to be kept: aren't looked after", async () => {
    const { asked } = keeping(0);
    await vi.advanceTimersByTimeAsync(3 * HOUR);
    expect(asked).toEqual([]);
  });

  it("where one fails: it is said in words, and tried again an hour later", async () => {
    const { asked, said, end } = keeping(7, () => Promise.reject(new Error("The disk is full.")));
    await vi.advanceTimersByTimeAsync(HOUR);
    expect(said[0]).toBe("The daily copy was not made: The disk is full.");
    expect(asked).toHaveLength(2);
    end();
  });
});
