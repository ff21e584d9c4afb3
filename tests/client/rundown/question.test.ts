import { describe, expect, it } from "vitest";
import { solve } from "#client/state/outcome.ts";
import { questionOf } from "#client/views/rundown/question.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();
const asked = { startCharge: 0.8, targetMargin: 1.7 };

function pane() {
  const build = book.builds.find((each) => each.id === "pane-crawler")?.data;
  if (!build) throw new Error("The demo has no pane crawler.");
  return build;
}

function withMotor(change: object) {
  const motors = book.motors.map((motor) => ({ ...motor, data: { ...motor.data, ...change } }));
  return { ...book, motors };
}

describe("questionOf", () => {
  it("takes cell, thermal figures and attitudes from the book, with a demo build, and the handles as set", () => {
    const question = questionOf(book, solve(book, pane()), asked);
    const pack = book.packs.find((each) => each.id === pane().pack)?.data;
    expect(question?.input.pack.cell).toEqual(pack?.cell);
    expect(question?.input.pack.series).toBe(2);
    expect(question?.input.motor).toMatchObject({ thermalResistance: 7, thermalTimeConstant: 45 });
    expect(question?.input).toMatchObject(asked);
    expect(question?.named.map((each) => each.angle)).toEqual([180, 90, 153]);
    expect(question?.windingEstimated).toBe(true);
  });

  it("is plain data, with everything in it, so that it can go to another thread", () => {
    const question = questionOf(book, solve(book, pane()), asked);
    expect(structuredClone(question)).toEqual(question);
  });

  it("estimates the thermal resistance from the can, with none stated, and marks it", () => {
    const changedBook = withMotor({ thermalResistance: undefined, estimated: [] });
    const question = questionOf(changedBook, solve(changedBook, pane()), asked);
    const area = Math.PI * 0.022 * 0.018 + (Math.PI / 2) * 0.022 ** 2;
    expect(question?.input.motor.thermalResistance).toBeCloseToRelative(1 / (15 * area), 1e-12);
    expect(question?.windingEstimated).toBe(true);
  });

  it("leaves the time constant out, with no thermal resistance beside it and no size to estimate it from", () => {
    const changedBook = withMotor({ thermalResistance: undefined, length: undefined });
    const question = questionOf(changedBook, solve(changedBook, pane()), asked);
    expect(question?.input.motor).toMatchObject({ thermalResistance: null, thermalTimeConstant: null });
  });

  it("is none, with a build whose rotor is not in the book", () => {
    const build = { ...pane(), rotor: "gone" };
    expect(questionOf(book, solve(book, build), asked)).toBeNull();
  });
});
