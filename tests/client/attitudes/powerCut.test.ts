import { describe, expect, it } from "vitest";
import { solve } from "#client/state/outcome.ts";
import { answerTo, replyTo } from "#client/views/attitudes/power/answer.ts";
import { inertiaOf, questionOf } from "#client/views/attitudes/power/question.ts";
import { cutText, fallText, onText } from "#client/views/attitudes/power/words.ts";
import { bellInertia, discInertia } from "#shared/physics/inertia.ts";
import { powerCut } from "#shared/physics/powerCut.ts";
import { demoBook } from "#tests/support/demoBook.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";

const book = demoBook();
const pane = book.builds.find(({ id }) => id === "pane-crawler")?.data;
if (!pane) throw new Error("The demo has no pane crawler.");
const outcome = solve(book, pane);

describe("inertia from masses", () => {
  // Mechanics: a disc ½m·r², a thin ring m·r².
  it("of an even disc is ½mr², of one whose bore reaches its rim mr²", () => {
    expect(discInertia(0.01, 0.04)).toBeCloseToRelative(0.5 * 0.01 * 0.02 ** 2, 1e-14);
    expect(discInertia(0.01, 0.04, 0.04)).toBeCloseToRelative(0.01 * 0.02 ** 2, 1e-14);
  });

  it("refuses a negative mass and a diameter of 0", () => {
    expectOutOfRange(() => discInertia(-1, 0.04), "rotor.mass");
    expectOutOfRange(() => bellInertia(0.01, 0), "motor.diameter");
  });

  it("is as the build types it, else estimated from rotor and motor, else missing with what to weigh", () => {
    expect(inertiaOf(book, solve(book, { ...pane, inertia: 2e-6 }))).toMatchObject({
      basis: "typed",
      value: 2e-6,
    });
    const made = inertiaOf(book, outcome);
    expect(made.basis).toBe("estimated");
    const light = {
      ...book,
      rotors: book.rotors.map((rotor) => ({
        ...rotor,
        data: { ...rotor.data, sizes: rotor.data.sizes.map(({ mass: _m, ...size }) => size) },
      })),
    };
    expect(inertiaOf(light, outcome)).toMatchObject({
      basis: "missing",
      message: expect.stringMatching(/weigh it/),
    });
  });
});

describe("what a power cut does, in Attitudes", () => {
  const typed = { basis: "typed", value: 1.2e-6, from: "" } as const;
  const question = questionOf(typed, outcome) ?? expect.fail("no question");
  const answered = answerTo(question);

  it("names each attitude once, the first to let go first, with the seconds of POST /power-cut", () => {
    const [first] = answered.held;
    const { attitudes, toHold } = powerCut(question.input, [180, 90, 153]);
    expect(first.name).toBe("the overhang");
    expect(answered.held.find(({ name }) => name === "the wall")?.after).toBe(
      attitudes.find(({ angle }) => angle === 90)?.parked,
    );
    expect(answered.toHold).toBe(toHold);
    const times = answered.held.map(({ after }) => after);
    expect(times).toEqual([...times].sort((a, b) => a - b));
  });

  it("is said with both: when it lets go, and how far it falls", () => {
    expect(cutText(answered)).toMatch(
      /^When the power goes it lets go of the overhang after 0\.\d\d\u202fs, .* and the ceiling after/,
    );
    expect(onText(answered)).toMatch(/holds everywhere it has to go after 0\.\d\d\u202fs/);
    // h = ½gt², v = √(2gh), E = mgh.
    expect(fallText(0.5, 2)).toBe(
      "From 2.0\u202fm it hits the ground 0.64\u202fs later, at 6.3\u202fm/s with 9.8\u202fJ. Tether it.",
    );
    expect(fallText(0.5, null)).toMatch(/isn't known/);
  });

  it("of one that isn't held says that it never will be, and of a problem says it in words", () => {
    const heavy = questionOf(typed, solve(book, { ...pane, vehicle: { ...pane.vehicle, mass: 20 } }));
    expect(heavy && onText(answerTo(heavy))).toMatch(/never holds/);
    expect(replyTo({ ...question, input: { ...question.input, inertia: 0 } })).toEqual({
      problem: expect.stringMatching(/inertia/),
    });
  });
});
