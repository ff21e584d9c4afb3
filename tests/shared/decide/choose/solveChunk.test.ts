import { describe, expect, it } from "vitest";
import { bytesOf, chunkOver, FLAG, STORED } from "#shared/decide/choose/columns.ts";
import { ductedInput } from "#shared/decide/choose/input.ts";
import { placesOf } from "#shared/decide/choose/places.ts";
import { prepare } from "#shared/decide/choose/prepare.ts";
import { RUN, solveChunk } from "#shared/decide/choose/solveChunk.ts";
import { gathered } from "#shared/decide/choose/values.ts";
import { OutOfRangeError } from "#shared/numeric/errors.ts";
import { predict } from "#shared/physics/predict.ts";
import { caught } from "./caught.ts";
import { mixedQuestion, motor, question } from "./questions.ts";

const MASKS = ["flags", "broken"] as const;
const problem = mixedQuestion(3);
const prepared = prepare(problem);
const SIZE = 4 * RUN;
const whole = solveChunk(prepared, 0, SIZE);

describe("combinations solved in chunks", () => {
  it.each([
    [0, 1],
    [1, RUN - 1],
    [RUN - 1, RUN + 2],
    [RUN, 2 * RUN],
    [1537, 3001],
    [SIZE - 1, SIZE],
  ])("from %i to %i equal the same combinations of the whole, to the last digit", (from, to) => {
    const part = solveChunk(prepared, from, to);
    for (const name of [...STORED, ...MASKS]) expect(part[name]).toEqual(whole[name].subarray(from, to));
  });

  it("are put in order whatever order they come in, and a hole or a double is an error", () => {
    const cuts = [0, 700, 1024, 2000];
    const parts = cuts.slice(1).map((to, i) => solveChunk(prepared, cuts[i], to));
    const forwards = gathered(parts);
    expect(gathered([...parts].reverse())).toEqual(forwards);
    expect(() => gathered(parts.slice(1))).toThrow(RangeError);
    expect(() => gathered([...parts, parts[1]])).toThrow(RangeError);
  });

  it("travel as one buffer of 92 bytes a combination", () => {
    expect(bytesOf(10) - bytesOf(0)).toBe(920);
    const part = solveChunk(prepared, 10, 20);
    expect(part.buffer.byteLength).toBe(bytesOf(10));
    const copy = chunkOver(10, 10, structuredClone(part.buffer, { transfer: [part.buffer] }));
    for (const name of STORED) expect(copy[name]).toEqual(whole[name].subarray(10, 20));
  });

  it.each([
    [-1, 5],
    [5, 5],
    [0.5, 5],
    [0, Number.NaN],
    [0, prepared.count + 1],
  ])("from %s to %s are refused", (from, to) => {
    caught(() => solveChunk(prepared, from, to), OutOfRangeError);
  });
});

describe("a motor that does not turn", () => {
  it("on a throttle of 0 has no point, no margin, no current and no time", () => {
    const still = prepare(question({ duties: [0] }));
    const chunk = solveChunk(still, 0, still.count);
    expect(chunk.flags.every((flags) => flags & FLAG.noPoint)).toBe(true);
    expect(chunk.broken.every((bits) => bits & 1)).toBe(true);
    for (const name of ["speed", "suction", "parked", "driving"] as const)
      expect(chunk[name].every((value) => value === 0)).toBe(true);
    for (const name of ["packCurrent", "time"] as const) expect(chunk[name].every(Number.isNaN)).toBe(true);
  });

  it("because its winding settles too hot has no point, as in a prediction", () => {
    const hot = motor("hot", { frictionTorque: 6e-3, thermalResistance: 200 });
    const stalls = prepare(question({ motors: [hot] }));
    const chunk = solveChunk(stalls, 0, stalls.count);
    expect(chunk.flags.every((flags) => flags & FLAG.noPoint)).toBe(true);
    const { point, warnings } = predict(ductedInput(stalls.problem, placesOf(stalls.radix, 0)));
    expect(point).toBeNull();
    expect(warnings[0].message).toContain("while it is cold");
  });
});
