import { describe, expect, it } from "vitest";
import { nonDominated } from "#shared/decide/choose/front.ts";
import { OutOfRangeError } from "#shared/numeric/errors.ts";
import { createRandom } from "#shared/numeric/random.ts";
import { dominatedBySome } from "#tests/support/plainChoice.ts";
import { caught } from "./caught.ts";

const random = createRandom(5);
const all = (count: number) => Uint32Array.from({ length: count }, (_, i) => i);

/** Whole numbers up to `steps` tie often; more steps tie seldom. */
const points = (count: number, objectives: number, steps: number): Float64Array[] =>
  Array.from({ length: objectives }, () =>
    Float64Array.from({ length: count }, () => Math.floor(steps * random.uniform())),
  );

const plain = (keys: Float64Array[]): number[] =>
  [...all(keys[0].length)].filter((i) => !dominatedBySome(keys, i));

describe("the non-dominated points", () => {
  it.each([
    [1, 300, 20],
    [2, 300, 8],
    [2, 1000, 1e6],
    [3, 300, 5],
    [3, 1500, 1e6],
    [3, 7, 2],
    [3, 1, 2],
  ])(
    "of %i objectives, %i points, %i steps equal those of all pairs compared",
    (objectives, count, steps) => {
      for (let again = 0; again < 5; again++) {
        const keys = points(count, objectives, steps);
        expect([...nonDominated(keys, all(count))]).toEqual(plain(keys));
      }
    },
  );

  it("of a whole are those of its parts' fronts", () => {
    const keys = points(2000, 3, 40);
    const parts = [0, 500, 1300].map((from, i, cuts) => all(2000).subarray(from, cuts[i + 1] ?? 2000));
    const union = parts.flatMap((part) => [...nonDominated(keys, part)]);
    expect(nonDominated(keys, Uint32Array.from(union.reverse()))).toEqual(nonDominated(keys, all(2000)));
  });

  it("of equal points are all of them", () => {
    const keys = [1, 2, 3].map((value) => new Float64Array(400).fill(value));
    expect(nonDominated(keys, all(400))).toEqual(all(400));
  });

  it("on a line of trade are all of them", () => {
    const up = Float64Array.from(all(500));
    expect(nonDominated([up, up.map((x) => -x)], all(500))).toEqual(all(500));
  });

  it("of none are none; of no or four objectives are refused", () => {
    expect(nonDominated([new Float64Array()], new Uint32Array())).toHaveLength(0);
    for (const objectives of [0, 4])
      caught(() => nonDominated(points(3, objectives, 2), all(3)), OutOfRangeError);
  });
});
