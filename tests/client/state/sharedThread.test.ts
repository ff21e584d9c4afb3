import { signal } from "@preact/signals";
import { describe, expect, it } from "vitest";
import { SharedThread } from "#client/state/sharedThread.ts";
import type { Thread } from "#client/state/useWorker.ts";

/** A thread whose replies are given by hand. */
class ByHand implements Thread {
  onmessage: Thread["onmessage"] = null;
  onerror: Thread["onerror"] = null;
  readonly asked: string[] = [];
  ended = false;
  postMessage(question: string) {
    this.asked.push(question);
  }
  terminate() {
    this.ended = true;
  }
  reply(data: string) {
    this.onmessage?.call(this as unknown as Worker, { data } as MessageEvent);
  }
}

function shared(first: string | null = "a") {
  const started: ByHand[] = [];
  const question = signal<string | null>(first);
  const start = () => {
    const thread = new ByHand();
    started.push(thread);
    return thread;
  };
  return { started, question, thread: new SharedThread<string, string>(start, question, "failed") };
}

describe("a thread shared by whoever asks on the page", () => {
  it("is started once for two users, asks once, and ends with the last of them", () => {
    const { started, thread } = shared();
    const [first, second] = [thread.use(), thread.use()];
    expect(started).toHaveLength(1);
    expect(started[0].asked).toEqual(["a"]);
    first();
    expect(started[0].ended).toBe(false);
    second();
    expect(started[0].ended).toBe(true);
  });

  it("keeps the last reply while the next is worked out, with what it answers", () => {
    const { started, question, thread } = shared();
    thread.use();
    started[0].reply("A");
    expect(thread.worked.value).toEqual({ reply: "A", asked: "a", busy: false });
    question.value = "b";
    expect(thread.worked.value).toEqual({ reply: "A", asked: "a", busy: true });
    started[0].reply("B");
    expect(thread.worked.value).toEqual({ reply: "B", asked: "b", busy: false });
  });

  it("asks nothing while there is no question, and starts anew for the next user", () => {
    const { started, question, thread } = shared(null);
    thread.use()();
    expect(started[0].asked).toEqual([]);
    question.value = "c";
    expect(started[0].asked).toEqual([]);
    thread.use();
    expect(started[1].asked).toEqual(["c"]);
  });
});
