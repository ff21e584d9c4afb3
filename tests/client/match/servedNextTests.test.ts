import { afterEach, describe, expect, it, vi } from "vitest";
import { solve } from "#client/state/outcome.ts";
import { questionOf } from "#client/views/match/nextTest/question.ts";
import { servedNextTests } from "#client/views/match/nextTest/served.ts";
import { fingerprint } from "#shared/book/fingerprint.ts";
import { curveTitle } from "#shared/book/nextTest/curveTitle.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();
const stored = (() => {
  const build = book.builds.find(({ id }) => id === "roof-crawler");
  if (!build) throw new Error("The demo has no roof-crawler.");
  return build;
})();

function asked(attitude: number | "worst") {
  const question = questionOf(book, solve(book, stored.data), { attitude, mode: "parked" });
  if (!question) throw new Error("no question");
  return question;
}

const spread = { p5: 1, p50: 1.1, p95: 1.2, holds: 0.95 };
const curve = {
  key: "curve",
  kind: "curve",
  title: "metric",
  takes: "",
  corrects: [],
  cut: 0.4,
  after: spread,
};

/** A server that answers for some records. */
function serving(answer: object) {
  const paths: string[] = [];
  vi.stubGlobal("fetch", (path: string) => {
    paths.push(path);
    return Promise.resolve(Response.json(answer));
  });
  return paths;
}

const now = () => new AbortController().signal;

afterEach(() => vi.unstubAllGlobals());

describe("next tests, asked of the server", () => {
  const question = asked("worst");
  const { angle } = question.verdict;
  const from = fingerprint(question.book, [stored]);
  const answer = { angle, mode: "parked", from, before: spread, over: null, tests: [curve] };

  it("of the worst attitude, worked out from the same records: taken, a size in the page's own units", async () => {
    const paths = serving(answer);
    const found = await servedNextTests(question, stored, now());
    expect(paths).toEqual(["/api/v1/builds/roof-crawler/next-tests?mode=parked"]);
    const rotor = book.rotors.find(({ id }) => id === stored.data.rotor)?.data.name ?? "";
    const title = curveTitle(rotor, stored.data.diameter);
    expect(found).toEqual({ before: spread, over: null, tests: [{ ...curve, title }] });
  });

  it("of an attitude of its own: says which", async () => {
    const paths = serving({ ...answer, angle: 153 });
    expect(await servedNextTests(asked(153), stored, now())).not.toBeNull();
    expect(paths[0]).toContain("angle=153");
  });

  it.each([
    ["from other records", { ...answer, from: "0123456789abcdef" }],
    ["of another angle", { ...answer, angle: angle - 1 }],
  ])("answered %s: left to the page", async (_what, other) => {
    serving(other);
    expect(await servedNextTests(question, stored, now())).toBeNull();
  });

  it("of a build that was corrected since: left to the page", async () => {
    serving(answer);
    const corrected = { ...stored, revision: stored.revision + 1 };
    expect(await servedNextTests(question, corrected, now())).toBeNull();
  });

  it("refused, or by a server that gives no answer: left to the page", async () => {
    vi.stubGlobal("fetch", () => Promise.resolve(new Response("busy", { status: 429 })));
    expect(await servedNextTests(question, stored, now())).toBeNull();
    vi.stubGlobal("fetch", () => Promise.reject(new TypeError("gone")));
    expect(await servedNextTests(question, stored, now())).toBeNull();
  });
});
