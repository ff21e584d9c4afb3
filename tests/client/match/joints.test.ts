import { describe, expect, it } from "vitest";
import { solve } from "#client/state/outcome.ts";
import { foundIn } from "#client/state/verdict/found.ts";
import { answerTo } from "#client/views/match/ways/answer.ts";
import { jointCells } from "#client/views/match/ways/joints.ts";
import { questionOf } from "#client/views/match/ways/question.ts";
import { answerTo as runAnswer } from "#client/views/rundown/answer.ts";
import { questionOf as runQuestion } from "#client/views/rundown/question.ts";
import { overSentence } from "#client/views/rundown/rundownWords.ts";
import { skirtOver } from "#shared/physics/joints.ts";
import { predictAny } from "#shared/physics/predictAny.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();
const pane = book.builds.find(({ id }) => id === "pane-crawler")?.data;
if (!pane) throw new Error("The demo has no pane crawler.");
const outcome = solve(book, pane);
const input = outcome.resolved?.input;
if (!input) throw new Error("The demo's crawler has no numbers.");
const deep = (depth: number) => ({
  ...book,
  surfaces: book.surfaces.map((surface) => ({
    ...surface,
    data: { ...surface.data, joints: [{ name: "Bar", depth, width: 0.01, met: "along" as const }] },
  })),
});

describe("a build on a surface with a joint", () => {
  it("is found to hold over it what a prediction over it holds", () => {
    const found = foundIn(book, outcome);
    const [crossing] = found && "answered" in found ? found.answered.findings.crossings : [];
    const joint = { depth: 3e-4, width: 6e-3, met: "across" } as const;
    const over = predictAny({ ...input, skirt: skirtOver(input.skirt, joint, "across", 0.096) });
    expect(crossing.joint.name).toBe("the putty line");
    expect(crossing.worst.driving.margin).toBe(over.worst.driving.margin);
  });

  it("is told the deepest joint for a margin of 1 and for the one wanted", () => {
    const asked = questionOf(book, outcome, { attitude: "worst", mode: "driving" });
    const { joints } = asked ? answerTo(asked) : { joints: [] };
    expect(joints.map(jointCells)).toEqual([
      {
        label: "Deepest joint, along a side of the lip",
        goal: expect.stringMatching(/^\d\.\d\d\u202fmm at 1\.00\u202f×, 0\.\d\d\u202fmm at 1\.50\u202f×$/),
      },
      {
        label: "Deepest joint, across the lip, 6.0\u202fmm wide",
        goal: expect.stringMatching(/ at 1\.50\u202f×$/),
      },
    ]);
    const at = joints[0].depths[1].depth ?? Number.NaN;
    const over = predictAny({ ...input, skirt: { ...input.skirt, joint: { span: 0.096, depth: at } } });
    expect(over.worst.driving.margin).toBeCloseToRelative(1.5, 1e-6);
  });

  it("has its run over the joint beside the run, which is lost earlier", () => {
    const asked = { startCharge: 1, targetMargin: 1.5, keep: null };
    const of = (depth: number) => {
      const changed = deep(depth);
      const question = runQuestion(changed, solve(changed, pane), asked);
      return question && runAnswer(question);
    };
    const deepRun = of(6e-4);
    const last = (tracks: readonly { readonly margins: readonly (number | null)[] }[]) =>
      tracks[0].margins[0] ?? 0;
    expect(last(deepRun?.over?.tracks ?? [])).toBeLessThan(last(deepRun?.tracks ?? []));
    expect(deepRun && overSentence(deepRun)).toMatch(/^Over the bar /);
    expect(of(0.02)?.over?.tracks.every(({ holds }) => holds.state === "never-held")).toBe(true);
  });

  it("without a joint has no such run", () => {
    const none = {
      ...book,
      surfaces: book.surfaces.map((each) => ({ ...each, data: { ...each.data, joints: [] } })),
    };
    const question = runQuestion(none, solve(none, pane), { startCharge: 1, targetMargin: 1.5 });
    expect(question?.joints).toBeNull();
  });
});
