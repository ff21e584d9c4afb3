import { signal } from "@preact/signals";
import { describe, expect, it } from "vitest";
import { SharedTask } from "#client/threads/sharedTask.ts";

/** Its questions are put to nobody: their replies are given by hand. */
function shared(first: string | null = "a", ahead?: (isWanted: () => boolean) => Promise<unknown>) {
  const asked: string[] = [];
  const givenUp: string[] = [];
  const question = signal<string | null>(first);
  let reply: (text: string) => void = () => {};
  const task = new SharedTask<string, string>(
    {
      prepare: () => {},
      put: (put, done) => {
        asked.push(put);
        reply = (text) => done({ reply: text });
        return () => givenUp.push(put);
      },
    },
    question,
    "failed",
    ahead,
  );
  return { asked, givenUp, question, task, reply: (text: string) => reply(text) };
}

describe("a question shared by whoever asks it on the page", () => {
  it("is put once for two users, and given up with the last of them", () => {
    const { asked, givenUp, task } = shared();
    const [first, second] = [task.use(), task.use()];
    expect(asked).toEqual(["a"]);
    first();
    expect(givenUp).toEqual([]);
    second();
    expect(givenUp).toEqual(["a"]);
  });

  it("keeps the last reply while the next is worked out, with what it answers", () => {
    const { question, task, reply } = shared();
    task.use();
    reply("A");
    expect(task.worked.value).toEqual({ reply: "A", asked: "a", busy: false });
    question.value = "b";
    expect(task.worked.value).toEqual({ reply: "A", asked: "a", busy: true });
    reply("B");
    expect(task.worked.value).toEqual({ reply: "B", asked: "b", busy: false });
  });

  it("asks nothing while there is no question, nor between two users", () => {
    const { asked, question, task } = shared(null);
    task.use()();
    question.value = "c";
    expect(asked).toEqual([]);
    task.use();
    expect(asked).toEqual(["c"]);
  });
});

describe("a question that something is worked out ahead of", () => {
  it("is put once that is done, and not where nobody uses it any more", async () => {
    let isDone = () => {};
    let wanted = () => true;
    const { asked, task } = shared("a", (isWanted) => {
      wanted = isWanted;
      return new Promise<void>((resolve) => {
        isDone = resolve;
      });
    });
    const leave = task.use();
    leave();
    expect(wanted()).toBe(false);
    isDone();
    await Promise.resolve();
    expect(asked).toEqual([]);
    task.use();
    expect(task.begun.value).toBe(false);
    isDone();
    await Promise.resolve();
    expect(task.begun.value).toBe(true);
    expect(asked).toEqual(["a"]);
  });
});
