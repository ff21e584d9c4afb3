import { describe, expect, it } from "vitest";
import { Lane, type Thread } from "#client/threads/lane.ts";

/** A thread that replies only when told to. */
class ByHand implements Thread {
  onmessage: Thread["onmessage"] = null;
  onerror: Thread["onerror"] = null;
  readonly asked: unknown[] = [];
  ended = false;
  postMessage(question: unknown) {
    this.asked.push(question);
  }
  terminate() {
    this.ended = true;
  }
  reply(data: string) {
    this.onmessage?.call(this as unknown as Worker, { data } as MessageEvent);
  }
  fail() {
    this.onerror?.call(this as unknown as Worker, new Event("error") as ErrorEvent);
  }
}

function lane() {
  const started: ByHand[] = [];
  const ends: [string, unknown][] = [];
  const own = new Lane(() => {
    const thread = new ByHand();
    started.push(thread);
    return thread;
  });
  const ask = (posted: string, rank = 0) =>
    own.ask({ posted, rank, done: (end) => ends.push([posted, end === null ? null : end.reply]) });
  return { started, ends, ask };
}

describe("a lane, of several jobs", () => {
  it("starts one thread with the first, and does them one after the other in it", () => {
    const { started, ends, ask } = lane();
    expect(started).toHaveLength(0);
    ask("a");
    ask("b");
    expect(started.map(({ asked }) => asked)).toEqual([["a"]]);
    started[0].reply("A");
    expect(started.map(({ asked }) => asked)).toEqual([["a", "b"]]);
    started[0].reply("B");
    expect(ends).toEqual([
      ["a", "A"],
      ["b", "B"],
    ]);
  });

  it("of different ranks: does the lower first, once the one under way is done", () => {
    const { started, ask } = lane();
    ask("long", 1);
    ask("longer", 2);
    ask("short");
    for (const reply of ["A", "B"]) started[0].reply(reply);
    expect(started[0].asked).toEqual(["long", "short", "longer"]);
  });

  it("of one given up while it waits: never does it, and the thread goes on", () => {
    const { started, ends, ask } = lane();
    ask("a");
    ask("b")();
    ask("c");
    started[0].reply("A");
    started[0].reply("C");
    expect(started.map(({ asked, ended }) => [asked, ended])).toEqual([[["a", "c"], false]]);
    expect(ends.map(([posted]) => posted)).toEqual(["a", "c"]);
  });

  it("of one given up under way: ends the thread, and does the next in another", () => {
    const { started, ends, ask } = lane();
    const giveUp = ask("a");
    ask("b");
    giveUp();
    expect(started.map(({ asked, ended }) => [asked, ended])).toEqual([
      [["a"], true],
      [["b"], false],
    ]);
    started[1].reply("B");
    expect(ends).toEqual([["b", "B"]]);
  });

  it("of one whose thread fails: says so of that one, and does the next in another", () => {
    const { started, ends, ask } = lane();
    ask("a");
    ask("b");
    started[0].fail();
    started[1].reply("B");
    expect(ends).toEqual([
      ["a", null],
      ["b", "B"],
    ]);
  });

  it("of one given up after its reply: leaves the thread to the next", () => {
    const { started, ask } = lane();
    const giveUp = ask("a");
    started[0].reply("A");
    giveUp();
    ask("b");
    expect(started.map(({ asked, ended }) => [asked, ended])).toEqual([[["a", "b"], false]]);
  });
});
