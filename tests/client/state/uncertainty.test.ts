import { describe, expect, it } from "vitest";
import { solve } from "#client/state/outcome.ts";
import { replyTo } from "#client/state/uncertainty/answer.ts";
import { uncertaintyState } from "#client/state/useUncertainty.ts";
import { statesUncertainty, uncertaintyAsked } from "#shared/book/uncertaintyAsked.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();
const build = book.builds[1].data;
const outcome = solve(book, build);

function asked() {
  const question = uncertaintyAsked(book, outcome);
  if (!question) throw new Error("The demo's second build has numbers.");
  return question;
}

describe("how sure a build is, as asked and answered", () => {
  it("asks for floor, wall, ceiling, the build's own, and the worst two last, in plain data", () => {
    const question = asked();
    const own = build.attitudes.map(({ angle }) => angle);
    expect(question.asked.angles?.slice(0, -2)).toEqual([...new Set([0, 90, 180, ...own])]);
    expect(question.asked.angles?.slice(-2)).toEqual([
      outcome.prediction?.worst.parked.angle,
      outcome.prediction?.worst.driving.angle,
    ]);
    expect(structuredClone(question)).toEqual(question);
  });

  it("answers with the worst attitudes' own spread; while the next is worked out the answer stays", () => {
    const question = asked();
    const reply = replyTo(question);
    const state = uncertaintyState(question, reply, true);
    expect(state.busy).toBe(true);
    expect(state.worst?.parked.angle).toBe(outcome.prediction?.worst.parked.angle);
    const { p5, p95 } = state.worst?.parked.parked ?? { p5: null, p95: null };
    expect(p5).toBeLessThan(outcome.prediction?.worst.parked.margin ?? 0);
    expect(p95).toBeGreaterThan(outcome.prediction?.worst.parked.margin ?? 0);
  });

  it("of a build without any uncertainty: says that nothing is stated, and is not sure of anything", () => {
    const question = { ...asked(), sources: {}, asked: { uncertainty: {}, correlated: [] } };
    expect(statesUncertainty(question)).toBe(false);
    const state = uncertaintyState(question, replyTo(asked()), true);
    expect(state).toMatchObject({ nothingStated: true, doubt: null, worst: null, busy: false });
  });

  it("of uncertainties that leave no answer: says why", () => {
    const reply = replyTo({ ...asked(), asked: { uncertainty: { "rotor.psi.2": 600 } } });
    expect(reply).toHaveProperty("problem");
    expect(uncertaintyState(asked(), reply, false).problem).toContain("smaller uncertainties");
  });

  it("of a build without numbers: asks nothing", () => {
    expect(uncertaintyAsked(book, solve(book, { ...build, motor: "no-such-motor" }))).toBeNull();
    expect(uncertaintyState(null, null, false)).toMatchObject({
      nothingStated: false,
      doubt: null,
      problem: null,
    });
  });
});
