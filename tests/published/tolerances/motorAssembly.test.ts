import { describe, expect, it } from "vitest";
import { stackOf } from "#shared/decide/fitUp/stack.ts";

const INCH = 0.0254;

/** Name, size with its sign in the loop, what it may be larger and smaller [in]; the limits are those of the size without its sign. */
const LOOP = [
  ["screw thread", -0.375, 0, -0.031],
  ["washer", 0.032, 0.002, -0.002],
  ["bearing cap", 0.06, 0.003, -0.003],
  ["bearing", 0.438, 0, -0.015],
  ["spacer", 0.12, 0.005, -0.005],
  ["rotor", 1.5, 0.01, -0.004],
  ["spacer", 0.12, 0.005, -0.005],
  ["bearing", 0.438, 0, -0.015],
  ["pulley casting", 0.45, 0.007, -0.007],
  ["shaft", -3.019, 0.012, 0],
  ["tapped hole", 0.3, 0.03, -0.03],
] as const;

describe("stackOf, on the motor assembly of a handbook", () => {
  // Drake (ed.), Dimensioning and Tolerancing Handbook, McGraw-Hill 1999, ch. 9: gap 0.0615 in, worst case ±0.0955, RSS ±0.0381. Found, in a public library's tests.
  it("gives the printed mean, worst case and root-sum-square to their four digits", () => {
    const stack = stackOf(
      LOOP.map(([, size, up, down]) => ({
        nominal: (Math.abs(size) + (up + down) / 2) * INCH,
        tolerance: ((up - down) / 2) * INCH,
        sense: size < 0 ? -1 : 1,
      })),
    );
    const inches = (length: number) => length / INCH;
    expect(inches(stack.clearance)).toBeCloseTo(0.0615, 4);
    expect(inches(stack.worstCase[0])).toBeCloseTo(-0.034, 4);
    expect(inches(stack.worstCase[1])).toBeCloseTo(0.157, 4);
    expect(Math.abs(inches(stack.rss[0]) - 0.0234)).toBeLessThanOrEqual(6e-5);
    expect(Math.abs(inches(stack.rss[1]) - 0.0996)).toBeLessThanOrEqual(6e-5);
    expect(stack.verdict).toBe("may-not-close");
  });
});
