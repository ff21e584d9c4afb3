import { describe, expect, it } from "vitest";
import { type Book, testsOf } from "#shared/book/book.ts";
import { motorBasis } from "#shared/book/motorBasis.ts";
import { plannedPull } from "#shared/book/nextTest/pull.ts";
import { predictedPull, rigAsBuild } from "#shared/book/pullPrediction.ts";
import { resolveAsSet } from "#shared/book/resolve/resolveWith.ts";
import { resolveBuild } from "#shared/book/resolve.ts";
import { offsetInUse, throttleOffset } from "#shared/book/throttle.ts";
import { predict } from "#shared/physics/predict.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const OFFSET = 0.12;
const SWEEP = [0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9];

/** A sweep by hand: of a supply of 8 V the motor gets δ·8 V, its winding takes 2 A·R of that, the lead carries δ·2 A. */
const swept = (kv: number, resistance: number, commands = SWEEP) =>
  commands.map((throttle, row) => {
    const duty = (throttle - OFFSET) / (1 - OFFSET);
    const rpm = kv * (duty * 8 - 2 * resistance);
    return { voltage: 8, current: 2 * duty, rpm, noLoad: false, throttle, row, setAside: null };
  });

describe("throttleOffset, on a sweep made by hand", () => {
  it("gives the offset that it was made with", () => {
    const found = throttleOffset(swept(3000, 0.1), { kv: 3000, resistance: 0.1 });
    expect(found?.offset).toBeCloseToRelative(OFFSET, 1e-9);
  });

  it("without part throttle, or with two throttles alone, knows none; commands then count as they are", () => {
    const constants = { kv: 3000, resistance: 0.1 };
    expect(throttleOffset(swept(3000, 0.1, [1, 1, 1]), constants)).toBeNull();
    expect(throttleOffset(swept(3000, 0.1, [0.8, 0.9]), constants)).toBeNull();
    expect(offsetInUse(null)).toBe(0);
  });
});

/** The demo's book with a sweep among the tests of its crawler's motor. */
function withSweep(book: Book, motor: string): Book {
  const basis = motorBasis(book, motor);
  const test = book.tests.find(({ data }) => data.kind === "motor" && data.motor === motor);
  if (!basis || test?.data.kind !== "motor") throw new Error("no motor test");
  const rows = swept(basis.constants.kv, basis.constants.resistance).map((row) => ({
    voltage: { value: row.voltage, unit: "V" },
    current: { value: row.current, unit: "A" },
    speed: { value: row.rpm, unit: "rpm" },
    throttle: { value: 100 * row.throttle, unit: "%" },
    noLoad: false,
  }));
  return { ...book, tests: [...book.tests, { ...test, id: "sweep", data: { ...test.data, rows } }] };
}

describe("a book with a sweep of a motor's throttle", () => {
  const demo = demoBook();
  const build = demo.builds.find(({ id }) => id === "pane-crawler")?.data;
  if (!build) throw new Error("no build");
  const book = withSweep(demo, build.motor);

  it("has the motor's offset, and its constants as before", () => {
    const basis = motorBasis(book, build.motor);
    expect(basis?.throttle?.offset).toBeCloseToRelative(OFFSET, 1e-9);
    expect(basis?.constants).toEqual(motorBasis(demo, build.motor)?.constants);
    expect(motorBasis(demo, build.motor)?.throttle).toBeNull();
  });

  const [pull] = testsOf(demo, "pull")
    .map(({ data }) => data)
    .filter(({ motor, direction }) => motor === build.motor && direction === "straight-off");
  const trial = { voltage: null, gap: null };

  it("predicts a pull at part throttle from the duty that the command stands for", () => {
    const half = { ...pull, duty: { value: 50, unit: "%" } };
    const { input } = resolveAsSet(demo, rigAsBuild(demo, half, trial));
    if (!input) throw new Error("no numbers");
    const supply = { ...input.supply, duty: (0.5 - OFFSET) / (1 - OFFSET) };
    const { predicted } = predictedPull(book, half, trial);
    expect(predicted).toBeCloseToRelative(predict({ ...input, supply }).suction, 1e-9);
    expect(predictedPull(book, pull, trial)).toEqual(predictedPull(demo, pull, trial));
  });

  it("plans pulls at the command that gives the build's duty", () => {
    const tried = { ...build, supply: { ...build.supply, duty: 0.5 } };
    const planned = plannedPull({ book, build: tried, resolved: resolveBuild(book, tried) }, "straight-off");
    const made = planned?.book.tests.find(({ id }) => !book.tests.some((test) => test.id === id))?.data;
    expect(made?.kind === "pull" && made.duty.value).toBeCloseToRelative(
      100 * (OFFSET + 0.5 * (1 - OFFSET)),
      1e-9,
    );
  });
});
