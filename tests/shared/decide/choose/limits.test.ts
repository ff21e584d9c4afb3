import { describe, expect, it } from "vitest";
import { createReading, read } from "#shared/decide/choose/judged.ts";
import { writeAllowed } from "#shared/decide/choose/limits.ts";
import { prepare } from "#shared/decide/choose/prepare.ts";
import type { Wants } from "#shared/decide/choose/problem.ts";
import { LIMITS } from "#shared/decide/choose/result.ts";
import { solveChunk } from "#shared/decide/choose/solveChunk.ts";
import { motor, pack, question, rotor, skirt } from "./questions.ts";

/** Every wish there is. */
const ALL: Required<Wants> = {
  attitudes: [
    { angle: 90, mode: "parked" },
    { angle: "worst", mode: "driving" },
  ],
  targetMargin: 1.5,
  leastCrossing: 1.2,
  leastTime: 60,
  leastKeptTime: 30,
  untimed: false,
  mostWinding: 400,
  leastRotorFactor: 2,
  mostHeight: 0.05,
  mostPrice: 40,
  closes: true,
  ratings: true,
  leastChance: 0.9,
};
const NONE: Wants = { attitudes: [], targetMargin: 1.5 };

const prepared = (wants: Wants) =>
  prepare(
    question({
      motors: [motor("rated")],
      rotors: [rotor("swept")],
      packs: [pack("two", 2)],
      skirts: [skirt("lip", { gaps: [0.0003] })],
      duties: [1],
      wants,
    }),
  );

/** No limit has it. */
const UNWRITTEN = -47.11;
const unwritten = (numbers: Float64Array) => LIMITS.filter((_, place) => numbers[place] === UNWRITTEN);

describe("the limits of a search", () => {
  it.each([
    ["nothing", NONE],
    ["everything", ALL],
  ])("where %s is wished, each has what is allowed and what a combination has", (_what, wants) => {
    const ready = prepared(wants);
    const reading = createReading();
    reading.allowed.fill(UNWRITTEN);
    reading.values.fill(UNWRITTEN);
    read(ready, solveChunk(ready, 0, 1), 0, reading);
    expect({ allowed: unwritten(reading.allowed), values: unwritten(reading.values) }).toEqual({
      allowed: [],
      values: [],
    });
  });

  it("each follow from some wish", () => {
    const allowed = new Float64Array(LIMITS.length);
    writeAllowed(prepared(ALL), 0, 0, allowed);
    expect(LIMITS.filter((_, place) => !Number.isFinite(allowed[place]))).toEqual([]);
  });

  it("end with the two times, which are worked out only where all the others are kept", () => {
    expect(LIMITS.slice(-2)).toEqual(["time", "keptTime"]);
  });
});
