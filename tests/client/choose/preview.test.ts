import { describe, expect, it } from "vitest";
import { previewOf, replyTo } from "#client/views/choose/preview/answer.ts";
import { triedProblem } from "#client/views/choose/preview/usePreview.ts";
import { detailOf } from "#shared/decide/choose/detail.ts";
import { prepare } from "#shared/decide/choose/prepare.ts";
import { solveChunk } from "#shared/decide/choose/solveChunk.ts";
import { chooseBody, chooseQuestion } from "#tests/support/chooseQuestion.ts";
import { demoBook } from "#tests/support/demoBook.ts";

describe("previewOf, a question on the demo", () => {
  it("counts the combinations whose every limit is kept, one by one", () => {
    const { problem } = chooseQuestion().question;
    const prepared = prepare(problem);
    const chunk = solveChunk(prepared, 0, prepared.count);
    const broken = Array.from({ length: prepared.count }, (_, i) => detailOf(prepared, [chunk], i).broken);
    const { tried, admissible, keepsOut } = previewOf(problem);
    expect({ tried, admissible }).toEqual({
      tried: prepared.count,
      admissible: broken.filter((limits) => limits.length === 0).length,
    });
    expect(keepsOut?.broken).toBeGreaterThan(0);
  });

  it("that asks for too little is met by every combination, and nothing keeps any out", () => {
    const { problem } = chooseQuestion({
      motors: ["bell-18"],
      rotors: [{ rotor: "swept-nine" }],
      skirts: [{ skirt: "square-lip" }],
      duties: [1],
      wants: { targetMargin: 1, attitudes: [{ angle: 0, mode: "parked" }], ratings: false },
    }).question;
    const { tried, admissible, keepsOut } = previewOf(problem);
    expect(admissible).toBe(tried);
    expect(keepsOut).toBeNull();
  });

  it("that can't be says so", () => {
    const { problem } = chooseQuestion().question;
    expect(replyTo({ ...problem, motors: [] })).toEqual({ problem: expect.stringContaining("motors") });
  });
});

describe("triedProblem", () => {
  it("of more than 20 000 combinations is left to the server", () => {
    const gaps = { from: 0.0002, to: 0.0012, step: 0.000001 };
    const body = chooseBody({ skirts: [{ skirt: "square-lip", gaps }] });
    expect(triedProblem(demoBook(), body)).toBeNull();
  });

  it("with a part that the book has not is left to the server's refusal", () => {
    expect(triedProblem(demoBook(), chooseBody({ motors: ["none"] }))).toBeNull();
  });

  it("otherwise is the server's own question", () => {
    expect(triedProblem(demoBook(), chooseBody())).toEqual(chooseQuestion().question.problem);
  });
});
