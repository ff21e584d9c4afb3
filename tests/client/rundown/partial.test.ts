import { describe, expect, it } from "vitest";
import { solve } from "#client/state/outcome.ts";
import { type Known, knownOf } from "#client/ui/partial/known.ts";
import { partialRunSentence } from "#client/views/rundown/partial/partialRunWords.ts";
import { type PartialRun, partialRun } from "#client/views/rundown/partial/run.ts";
import { questionOf } from "#client/views/rundown/question.ts";
import type { Book } from "#shared/book/book.ts";
import { runDown } from "#shared/physics/rundown.ts";
import { demoWithout, withoutCell, withoutFriction, withoutPower } from "#tests/support/partialBook.ts";

const plain = (text: string) => text.replace(/\s/g, " ");
const asked = { startCharge: 1, targetMargin: 1.5, cycle: [] };

function outcomeIn(book: Book) {
  const build = book.builds.find(({ id }) => id === "pane-crawler");
  if (!build) throw new Error("no build");
  return solve(book, build.data);
}

function runIn(book: Book): { known: Known; run: PartialRun | null } {
  const outcome = outcomeIn(book);
  const reply = knownOf(outcome);
  if (!reply || "problem" in reply) throw new Error("nothing is known");
  const run = partialRun(outcome, { ...asked, angles: [90, 180] });
  if (run && "problem" in run) throw new Error(run.problem);
  return { known: reply.known, run };
}

const stated = (book: Book): Book => ({
  ...book,
  surfaces: book.surfaces.map((each) => ({ ...each, data: { ...each.data, wheelFriction: 0.5 } })),
});

describe("a run-down of a build that lacks something", () => {
  it("without friction: has the minutes and the pulls of the run with any friction", () => {
    const book = demoWithout(withoutFriction);
    const { known, run } = runIn(book);
    const question = questionOf(stated(book), outcomeIn(stated(book)), asked);
    if (!run || !question) throw new Error("no run");
    const whole = runDown(question.input);
    // the solver starts from wherever the attitudes' falls were sought, so the last digit may differ
    expect(run.end.reason).toBe(whole.end.reason);
    expect(run.end.time).toBeCloseToRelative(whole.end.time, 1e-12);
    expect(run.last.suction).toBeCloseToRelative(whole.samples.at(-1)?.suction ?? 0, 1e-12);
    expect(run.start.suction).toBe(whole.samples[0].suction);
    expect(run.last.holds.every(({ verdict }) => verdict === null)).toBe(true);
    expect(plain(partialRunSentence(known, run))).toMatch(
      /^From a full charge it runs [\d.]+ minutes and its pull falls from \d+ g to \d+ g\. Whether it slides then isn't known/,
    );
  });

  it("without the cells' curve: says what it makes at the end of its charge, and that the minutes can't be said", () => {
    const { known, run } = runIn(demoWithout(withoutCell));
    expect(run).toBeNull();
    expect(plain(partialRunSentence(known, null))).toMatch(
      /^At the end of its charge, with its cells at their minimum of 3\.20 V under load, it makes .*How many minutes until then can't be said\.$/,
    );
  });

  it("without λ as well: speaks of no end of the charge", () => {
    const { known, run } = runIn(demoWithout(withoutCell, withoutPower));
    expect(run).toBeNull();
    expect(plain(partialRunSentence(known, null))).toMatch(/^Turned at .* How many minutes can't be said\.$/);
  });
});
