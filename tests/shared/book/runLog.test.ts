import { describe, expect, it } from "vitest";
import { resolveBuild, solvable } from "#shared/book/resolve.ts";
import { runInput } from "#shared/book/runInput.ts";
import { runChecks } from "#shared/book/runLog.ts";
import { type RunLogTest, runLogTest } from "#shared/model/tests/runLog.ts";
import { predictAny } from "#shared/physics/predictAny.ts";
import { runDown } from "#shared/physics/rundown.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();
const { id, data: build } = book.builds[0];

const drive = (...rows: object[]): RunLogTest =>
  runLogTest.parse({ kind: "run-log", date: "2026-06-01", build: id, rows });
const angle = (value: number) => ({ value, unit: "°" });

/** Margin at a charge, straight from the model. */
function marginAt(charge: number, degrees: number, state: "parked" | "driving") {
  const input = solvable(resolveBuild(book, { ...build, charge }));
  if (!input) throw new Error("The demo's build is whole.");
  return predictAny(input, [degrees]).attitudes[0][state].margin;
}

describe("runChecks", () => {
  it("by the charge that was stated: the model's margin of the state that it was in", () => {
    const charge = { value: 30, unit: "%" };
    const { checks } = runChecks(
      book,
      drive(
        { outcome: "held", angle: angle(90), charge },
        { outcome: "held", angle: angle(153), charge, driving: true },
      ),
    );
    expect(checks?.map(({ margin }) => margin)).toEqual([
      marginAt(0.3, 90, "parked"),
      marginAt(0.3, 153, "driving"),
    ]);
  });

  it("a drop of the voltage read makes the margin smaller", () => {
    const at = (value: number) => ({ outcome: "held", angle: angle(90), voltage: { value, unit: "V" } });
    const [high, low] = runChecks(book, drive(at(8), at(5))).checks ?? [];
    expect(low.margin).toBeLessThan(high.margin ?? 0);
    expect(high.from).toBe("voltage");
  });

  it("by the time alone: at the charge that a run from a full pack has left by then", () => {
    const full = { ...build, charge: 1 };
    const input = runInput(full, resolveBuild(book, full));
    if (!input) throw new Error("The demo's build runs.");
    const { samples } = runDown(input);
    const middle = samples[Math.floor(samples.length / 2)];
    const row = { outcome: "held", angle: angle(90), time: { value: middle.time, unit: "s" } };
    const [check] = runChecks(book, drive(row)).checks ?? [];
    expect(check.from).toBe("time");
    expect(check.margin).toBeCloseToRelative(marginAt(middle.charge, 90, "parked") ?? 0, 1e-9);
  });

  it("what held where it was predicted to hold agrees; what fell there does not, and the other way round", () => {
    const dead = { value: 0.3, unit: "V" };
    const row = (outcome: string, more: object = {}) => ({ outcome, angle: angle(180), ...more });
    const { checks } = runChecks(
      book,
      drive(row("held"), row("fell"), row("fell", { voltage: dead }), row("held", { voltage: dead })),
    );
    expect(checks?.map(({ holds, agrees }) => [holds, agrees])).toEqual([
      [true, true],
      [true, false],
      [false, true],
      [false, false],
    ]);
  });

  it("on the floor: no suction is needed, it holds", () => {
    const [check] = runChecks(book, drive({ outcome: "held", angle: angle(0) })).checks ?? [];
    expect(check).toMatchObject({ margin: null, holds: true, agrees: true, from: "build" });
  });

  it("of a build that is gone: says so", () => {
    expect(runChecks({ ...book, builds: [] }, drive({ outcome: "held", angle: angle(90) }))).toMatchObject({
      checks: null,
    });
  });
});
