import { describe, expect, it } from "vitest";
import { solve } from "#client/state/outcome.ts";
import { replyTo } from "#client/state/verdict/answer.ts";
import { foundIn, verdictBeside } from "#client/state/verdict/found.ts";
import { judgedBuild } from "#shared/book/judgedBuild.ts";
import { resolveBuild } from "#shared/book/resolve.ts";
import { verdictOf } from "#shared/decide/verdict/verdict.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();
const build = book.builds[0].data;
const threeCells = { ...build, overrides: { ...build.overrides, series: 3 } };

function found(of = build) {
  const answer = foundIn(book, solve(book, of));
  if (!answer || !("answered" in answer)) throw new Error("The demo's first build has numbers.");
  return answer.answered;
}

describe("the verdict on the screen", () => {
  it("before sampling: the same figures as the book's own function", () => {
    const judged = judgedBuild(book, build, resolveBuild(book, build), 128);
    const { least, nearest, passed } = verdictOf(found().findings);
    expect({ least, nearest, passed }).toEqual({
      least: judged?.verdict.least,
      nearest: judged?.verdict.nearest,
      passed: judged?.verdict.passed,
    });
  });

  it("asked of another thread, in plain data: comes with the seconds until it burns and the way out", () => {
    const question = { ...found(threeCells), asked: null };
    expect(structuredClone(question)).toEqual(question);
    const reply = replyTo(question);
    if (!("answered" in reply)) throw new Error("There is an answer.");
    const { verdict, ways } = reply.answered;
    expect(verdict.reason).toMatchObject({ kind: "winding", after: expect.any(Number) });
    expect(ways.map(({ setting }) => setting)).toContain("throttle");
  });

  it("of a build without numbers: none, and none beside another", () => {
    const outcome = solve(book, { ...build, motor: "no-such-motor" });
    expect(foundIn(book, outcome)).toBeNull();
    expect(verdictBeside(book, outcome)).toBeNull();
  });
});
