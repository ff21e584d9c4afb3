import { describe, expect, it } from "vitest";
import { requiredSuction } from "#shared/physics/hold/holdAt.ts";
import { CONDITIONS, compileHold, NUMBERS_PER_CONDITION } from "#shared/physics/hold/law.ts";
import { leastFriction } from "#shared/physics/hold/leastFriction.ts";
import type { Vehicle } from "#shared/physics/hold/vehicle.ts";
import { worstAngle } from "#shared/physics/hold/worst.ts";
import { holdAt } from "#tests/support/holdAt.ts";

/** A vehicle of 1 N, low and wide, so that sliding governs. */
const flat: Vehicle = {
  mass: 1 / 9.80665,
  wheelFriction: 0.5,
  skirtFriction: 0,
  skirtShare: 0,
  rollingResistance: 0,
  driven: "both",
  wheelbase: 0.12,
  track: 0.12,
  cgHeight: 0,
  cgFromRear: 0.06,
  suctionFromRear: 0.06,
  jolt: 0,
};

describe("suction against sliding", () => {
  // Equilibrium on an incline: F/W = sin θ/μ − cos θ, μ = 0.5. Derived (closed form); a negative value there means that none is needed.
  it.each([
    [0, 0],
    [30, 0.1339745962],
    [60, 1.2320508076],
    [90, 2],
    [116.5650511771, 2.2360679775],
    [120, 2.2320508076],
    [150, 1.8660254038],
    [180, 1],
  ])("at %s° with μ 0.5 is %s of the weight, to park and to drive", (angle, expected) => {
    const { required } = holdAt(flat, 1, angle);
    expect(Math.abs(required.slide - expected)).toBeLessThan(1e-9);
    expect(Math.abs(required.climb - expected)).toBeLessThan(1e-9);
  });

  // Maximum of that law: θ* = 90° + arctan μ, F*/W = √(1 + 1/μ²). Derived (closed form). Wall and ceiling alone would be up to 41 % too kind.
  it.each([
    [0.3, 106.6992442, 3.4801022, 3.3333333],
    [0.5, 116.5650512, 2.236068, 2],
    [0.7, 124.9920202, 1.7437937, 1.4285714],
    [1, 135, Math.SQRT2, 1],
  ])("with μ %s is largest on an overhang of %s°", (wheelFriction, angle, most, onWall) => {
    const vehicle = { ...flat, wheelFriction };
    const worst = worstAngle(vehicle, 1);
    expect(worst.parked.angle).toBeCloseToRelative(angle, 1e-7);
    expect(worst.parked.governs).toEqual(["slide"]);
    expect(1 / (worst.parked.margin ?? Number.NaN)).toBeCloseToRelative(most, 1e-7);
    expect(worst.driving.angle).toBeCloseToRelative(angle, 1e-7);
    expect(requiredSuction(vehicle, 90).parked).toBeCloseToRelative(onWall, 1e-7);
  });

  // Hibbeler & Gupta, Statics, Example 8.2 (p. 306): a crate slips at 25°, μ = tan 25° = 0.466. Found in a public textbook companion. Three printed digits.
  it("at 25° is none with the book's μ of 0.466 and more, some with less", () => {
    expect(requiredSuction({ ...flat, wheelFriction: 0.4665 }, 25).parked).toBe(0);
    expect(requiredSuction({ ...flat, wheelFriction: 0.4655 }, 25).parked).toBeGreaterThan(0);
  });

  // Tayal, Engineering Mechanics, Examples 6.6–6.7: μ = 0.3, angle of repose 16.7°. Found in a public textbook companion. Three printed digits.
  it("with μ 0.3 is none up to the book's 16.7°, some beyond", () => {
    const vehicle = { ...flat, wheelFriction: 0.3 };
    expect(requiredSuction(vehicle, 16.69).parked).toBe(0);
    expect(requiredSuction(vehicle, 16.71).parked).toBeGreaterThan(0);
  });
});

describe("a crate pushed at its edge", () => {
  // Hibbeler & Gupta, Statics, Example 8.1 (p. 305): 196.2 N, 0.8 m wide; 80 N at 30° downwards at the upper edge of one side, 0.2 m over the floor.
  // F 69.3 N, N 236.2 N at 9.08 mm from the middle, on the side that is pushed. Found in a public textbook companion. Printed digits: 1e-3.
  const [push, weight] = [80, 196.2];
  const along = push * Math.cos(Math.PI / 6);
  /** The same crate on a slope: what pushes along is the slope's part of a weight that acts at the push's height. */
  const slope = Math.atan2(along, weight);
  const crate: Vehicle = {
    ...flat,
    mass: Math.hypot(along, weight) / 9.80665,
    wheelbase: 0.8,
    track: 0.8,
    cgHeight: 0.2,
    cgFromRear: 0.4,
    suctionFromRear: 0.8,
  };
  const suction = push * Math.sin(Math.PI / 6);

  it("needs the book's 69.3 N of friction under 236.2 N: μ of their ratio parks it, less doesn't", () => {
    const { parked } = leastFriction({ ...crate }, suction, (slope * 180) / Math.PI);
    expect(parked).toBeCloseToRelative(69.3 / 236.2, 1e-3);
    const { liftOff } = loadsOf(crate);
    expect(liftOff).toBeCloseToRelative(236.2, 1e-3);
  });

  it("stands on a normal force at the book's 9.08 mm from its middle, towards the pushed side, and doesn't tip", () => {
    const { uphill, downhill } = loadsOf(crate);
    expect(((uphill - downhill) / (uphill + downhill)) * 400).toBeCloseToRelative(9.08, 1e-3);
    expect(uphill).toBeGreaterThan(0);
    expect(downhill).toBeGreaterThan(0);
  });

  /** Loads as the conditions have them, a·F + p·cos θ − q·sin θ. */
  function loadsOf(vehicle: Vehicle) {
    const law = compileHold(vehicle);
    const at = (condition: number) => {
      const [a, p, q] = law.subarray(condition * NUMBERS_PER_CONDITION);
      return a * suction + p * Math.cos(slope) - q * Math.sin(slope);
    };
    const [up] = CONDITIONS.tip;
    return { liftOff: at(CONDITIONS.liftOff[0]), uphill: at(up), downhill: at(up + 1) };
  }
});

describe("suction against tipping over", () => {
  // Moments about the downhill wheels: F/W = (h/a) sin θ − cos θ, a = 0.06, h = 0.03, suction and weight on one line. Derived (closed form).
  it.each([
    [90, 0.5],
    [153.4349488, 1.1180339887],
    [180, 1],
  ])("at %s° with h/a = 0.5 is %s of the weight", (angle, expected) => {
    const { required } = holdAt({ ...flat, cgHeight: 0.03 }, 1, angle);
    expect(Math.abs(required.tip - expected)).toBeLessThan(1e-8);
  });

  it("with h/a = 0.5 and wheels that don't slide is largest at 153.43°", () => {
    const worst = worstAngle({ ...flat, cgHeight: 0.03, wheelFriction: 10 }, 1);
    expect(worst.parked.angle).toBeCloseToRelative(153.4349488, 1e-8);
    expect(worst.parked.governs).toEqual(["tip"]);
  });
});
