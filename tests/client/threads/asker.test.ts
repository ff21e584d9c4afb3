import { describe, expect, it } from "vitest";
import { Asker, type Worked } from "#client/threads/asker.ts";

/** Questions are put to nobody: their replies are given by hand. */
function asker() {
  const asked: number[] = [];
  const givenUp: number[] = [];
  const heard: Worked<number, string>[] = [];
  let end: (reply: string | null) => void = () => {};
  const asking = new Asker<number, string>(
    {
      prepare: () => {},
      put: (question, done) => {
        asked.push(question);
        end = (reply) => done(reply === null ? null : { reply });
        return () => givenUp.push(question);
      },
    },
    (worked) => heard.push(worked),
    "failed",
  );
  return { asked, givenUp, heard, asking, reply: (text: string | null) => end(text) };
}

describe("questions to a thread", () => {
  it("a second question while the first is worked out: it waits, and only the newest of those that wait is asked", () => {
    const { asked, heard, asking, reply } = asker();
    asking.ask(1);
    asking.ask(2);
    asking.ask(3);
    expect(asked).toEqual([1]);
    reply("one");
    expect(asked).toEqual([1, 3]);
    reply("three");
    expect(heard).toEqual([
      { reply: "one", asked: 1, busy: true },
      { reply: "three", asked: 3, busy: false },
    ]);
  });

  it("a question that no longer stands: what waits is dropped, what is under way still comes", () => {
    const { asked, heard, asking, reply } = asker();
    asking.ask(1);
    asking.ask(2);
    asking.drop();
    reply("one");
    expect(asked).toEqual([1]);
    expect(heard).toEqual([{ reply: "one", asked: 1, busy: false }]);
  });

  it("a thread that fails: its reply says so, and the next question is asked all the same", () => {
    const { asked, heard, asking, reply } = asker();
    asking.ask(1);
    asking.ask(2);
    reply(null);
    expect(heard).toEqual([{ reply: "failed", asked: 1, busy: true }]);
    expect(asked).toEqual([1, 2]);
  });

  it("a view that closes: what is under way is given up, what waits is never asked", () => {
    const { asked, givenUp, asking } = asker();
    asking.ask(1);
    asking.ask(2);
    asking.end();
    expect([asked, givenUp]).toEqual([[1], [1]]);
  });
});
