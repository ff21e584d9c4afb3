import { describe, expect, it } from "vitest";
import { inlined } from "#shared/book/named.ts";
import { predictedPull } from "#shared/book/pullPrediction.ts";
import type { PullTest } from "#shared/model/tests/pull.ts";
import { demoBook } from "#tests/support/demoBook.ts";
import { withoutCell } from "#tests/support/partialBook.ts";

const book = demoBook();
const stored = book.tests.find(({ data }) => data.kind === "pull" && data.direction === "straight-off");
const data = stored && inlined(book, stored.data);
if (data?.kind !== "pull") throw new Error("the demo has no such pull test");
const test: PullTest = data;
const at = { voltage: 7, gap: null };

function pull(change: Partial<PullTest>, trial: { voltage: number | null; gap: number | null } = at): number {
  const { predicted, missing } = predictedPull(book, { ...test, ...change }, trial);
  if (predicted === null) throw new Error(missing.join(" "));
  return predicted;
}

const rig = (grams: number) => ({ rigMass: { value: grams, unit: "g" } });

describe("predictedPull", () => {
  it("is the suction whatever the rig weighs, straight off and hung from the ceiling", () => {
    expect(pull(rig(900))).toBe(pull(rig(0)));
    expect(pull({ ...rig(900), direction: "ceiling" })).toBe(pull({}));
  });

  // μ(F + W): the rig presses on the surface that it is dragged along. g by definition, 9.80665 m/s² (3rd CGPM, 1901).
  it("is friction times suction and weight, dragged along", () => {
    const light = pull({ ...rig(0), direction: "along" });
    const heavy = pull({ ...rig(500), direction: "along" });
    const friction = light / pull({});
    expect(heavy - light).toBeCloseToRelative(friction * 0.5 * 9.80665, 1e-9);
    expect(friction).toBeGreaterThan(0.1);
    expect(friction).toBeLessThan(1.5);
  });

  it("asked of one test's rows in turn, on two shims and at two voltages: each as asked by itself", () => {
    const rows = [0.002, null, 0.0004, null, 0.002].map((gap, i) => ({ voltage: 7 + (i % 2), gap }));
    const inTurn = rows.map((row) => predictedPull(book, test, row).predicted);
    expect(inTurn).toEqual(rows.map((row) => pull({}, row)));
    expect(new Set(inTurn).size).toBe(3);
  });

  it("rises with the voltage read at the terminals, and falls with a shim under the skirt", () => {
    expect(pull({}, { voltage: 8, gap: null })).toBeGreaterThan(pull({}));
    expect(pull({}, { voltage: 7, gap: 0.002 })).toBeLessThan(pull({}, { voltage: 7, gap: 0.0004 }));
  });

  it("takes the pack's own voltage under load, where none was read: a fuller pack pulls more", () => {
    const charged = (percent: number) => ({ charge: { value: percent, unit: "%" } });
    const none = { voltage: null, gap: null };
    expect(pull(charged(95), none)).toBeGreaterThan(pull(charged(20), none));
    expect(pull({ charge: undefined }, none)).toBe(pull(charged(60), none));
  });

  it("needs no curve of the cells where the voltage was read; without one read, the discharge test is named", () => {
    const unmarked = withoutCell(book);
    expect(predictedPull(unmarked, test, at).predicted).toBe(pull({}));
    const { predicted, missing } = predictedPull(unmarked, test, { voltage: null, gap: null });
    expect(predicted).toBeNull();
    expect(missing.join(" ")).toContain("log a discharge test");
  });

  it("says what is missing where the rotor is unknown", () => {
    const { predicted, missing } = predictedPull(book, { ...test, rotor: "gone" }, at);
    expect(predicted).toBeNull();
    expect(missing.join(" ")).toMatch(/rotor/);
  });
});
