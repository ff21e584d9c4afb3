import { describe, expect, it } from "vitest";
import { followingInput } from "#shared/decide/shared.ts";

/** A copy of an input in which one number follows another: as much less as that one is more. */
function followed(of: "lossSum" | "psi", value: number, now: number): number {
  const copy = { skirt: { lossSum: value }, rotor: { psi: [0, value] }, vehicle: { pullFactor: 1 } };
  const path = of === "lossSum" ? "skirt.lossSum" : "rotor.psi.1";
  const { write } = followingInput(
    copy,
    { path: "vehicle.pullFactor", by: { [path]: -1 / value } },
    "follower",
  );
  if (of === "lossSum") copy.skirt.lossSum = now;
  else copy.rotor.psi[1] = now;
  write(new Float64Array(0), 0, new Float64Array(0));
  return copy.vehicle.pullFactor;
}

describe("a number that follows another's share", () => {
  // κ = 1/K: the product stays 1. 2(y − m)/(y + m) leaves out x³/12 of ln(1 + x).
  it.each([0.7, 0.9, 1.1, 1.3])(
    "which is %s of what it was: by its inverse, to a third of a per cent",
    (ratio) => {
      expect(followed("lossSum", 1.5, 1.5 * ratio) * ratio).toBeCloseToRelative(1, 4e-3);
    },
  );

  it("which is gone: stays finite, by e² at most", () => {
    expect(followed("lossSum", 1.5, 0)).toBeCloseToRelative(Math.exp(2), 1e-12);
  });

  it("which may be negative: in proportion to it", () => {
    expect(followed("psi", -2, -2.2)).toBeCloseToRelative(Math.exp(-0.1), 1e-12);
    expect(followed("psi", -2, 2)).toBeCloseToRelative(Math.exp(2), 1e-12);
  });
});
