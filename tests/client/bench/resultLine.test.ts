import { describe, expect, it } from "vitest";
import { resultLine } from "#client/views/bench/list/resultLine.ts";
import { groupSpeeds } from "#client/views/bench/record/speeds.ts";
import type { BenchTest } from "#shared/model/tests/index.ts";
import {
  FRICTION,
  KNOWN_CURVE,
  LEAK,
  MOTOR,
  PLATE_CURVE,
  PULL,
  RIDE_HEIGHT,
  RUN_LOG,
  THRUST,
  WEIGH_IN,
} from "./examples.ts";

const line = (test: BenchTest) => resultLine(test).replaceAll("\u202f", " ");
const pulls = (rows: unknown[]) => ({ ...PULL, rows }) as BenchTest;
const g = (value: number) => ({ value, unit: "g" });

describe("resultLine, what a test found in its own units", () => {
  it.each([
    ["a pull and one set aside", PULL, "held 410 g, let go at 430 g; 1 set aside"],
    ["a curve at one speed", PLATE_CURVE, "2 points, 1 speed; 1 set aside"],
    ["a curve whose speed moved with the load", KNOWN_CURVE, "3 points, 600–1000 rpm"],
    ["a motor", MOTOR, "2 runs, 3–4.1 V, 1 without load"],
    ["a leak read in two units", LEAK, "2 points, 50 Pa to 0.8 kPa"],
    ["slides", FRICTION, "2 slides, slid at 35–37°"],
    ["heights", RIDE_HEIGHT, "3 readings, 400 µm to 0.7 mm under −1 N to 300 g; 1 set aside"],
    ["weighings", WEIGH_IN, "2 readings, 31.2 g to 0.0314 kg; 1 set aside"],
    ["a drive, what went wrong first", RUN_LOG, "slid at 153°, held at 90°, 2–5 min in; 1 set aside"],
    ["thrusts read in two units", THRUST, "2 readings, 40 g to 1.6 N at 6000–12000 rpm; 1 set aside"],
  ])("of %s", (_what, test, expected) => {
    expect(line(test)).toBe(expected);
  });

  it("of a curve counts the speeds that were set, each with several points", () => {
    const rows = KNOWN_CURVE.rows.flatMap((row) => [row, row, row]);
    expect(line({ ...KNOWN_CURVE, rows } as BenchTest)).toBe("9 points, 2 speeds");
  });

  it("of several pulls gives the ranges", () => {
    const rows = [
      { held: g(410), letGo: g(430) },
      { held: g(380), letGo: g(400) },
    ];
    expect(line(pulls(rows))).toBe("2 pulls: held 380–410 g, let go at 400–430 g");
  });

  it("of a pull that was stopped early says so", () => {
    expect(line(pulls([{ held: g(500), letGo: null }]))).toBe("held 500 g, never pulled off");
  });

  it("says so where every row is set aside", () => {
    expect(line(pulls([{ held: g(1), letGo: null, setAside: "dust" }]))).toBe("every row is set aside");
  });
});

describe("groupSpeeds, readings that wander", () => {
  it("puts what lies within 3 % together, slowest first, the readings in their order", () => {
    expect(groupSpeeds([1000, 600, 9.9, 606, 10.01, 9.95])).toEqual([[2, 4, 5], [1, 3], [0]]);
  });
});
