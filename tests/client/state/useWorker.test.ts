import { describe, expect, it } from "vitest";
import { Asker, type Worked } from "#client/state/useWorker.ts";

/** A thread that replies only when told to. */
class HeldThread {
  readonly asked: number[] = [];
  ended = false;
  onmessage: ((event: MessageEvent<string>) => void) | null = null;
  onerror: ((event: ErrorEvent) => void) | null = null;
  postMessage(question: number): void {
    this.asked.push(question);
  }
  terminate(): void {
    this.ended = true;
  }
  reply(data: string): void {
    this.onmessage?.(new MessageEvent("message", { data }));
  }
}

function asker() {
  const thread = new HeldThread();
  const heard: Worked<number, string>[] = [];
  const asking = new Asker<number, string>(thread, (worked) => heard.push(worked), "failed");
  return { thread, heard, asking };
}

describe("questions to a thread", () => {
  it("a second question while the first is worked out: it waits, and only the newest of those that wait is asked", () => {
    const { thread, heard, asking } = asker();
    asking.ask(1);
    asking.ask(2);
    asking.ask(3);
    expect(thread.asked).toEqual([1]);
    thread.reply("one");
    expect(thread.asked).toEqual([1, 3]);
    thread.reply("three");
    expect(heard).toEqual([
      { reply: "one", asked: 1, busy: true },
      { reply: "three", asked: 3, busy: false },
    ]);
  });

  it("a question that no longer stands: what waits is dropped, what is under way still comes", () => {
    const { thread, heard, asking } = asker();
    asking.ask(1);
    asking.ask(2);
    asking.drop();
    thread.reply("one");
    expect(thread.asked).toEqual([1]);
    expect(heard).toEqual([{ reply: "one", asked: 1, busy: false }]);
  });

  it("a thread that fails: its reply says so, and the next question is asked all the same", () => {
    const { thread, heard, asking } = asker();
    asking.ask(1);
    asking.ask(2);
    thread.onerror?.(new Event("error") as ErrorEvent);
    expect(heard).toEqual([{ reply: "failed", asked: 1, busy: true }]);
    expect(thread.asked).toEqual([1, 2]);
  });

  it("a view that closes: its thread ends", () => {
    const { thread, asking } = asker();
    asking.end();
    expect(thread.ended).toBe(true);
  });
});
