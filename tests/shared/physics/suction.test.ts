import { describe, expect, it } from "vitest";
import { gapFlow, gapFrictionPressure } from "#shared/physics/restriction/lipGap.ts";
import { landShare, suctionForce } from "#shared/physics/suction.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";

const input = {
  area: 4e-3,
  perimeter: 0.25,
  land: 3e-3,
  pressure: 600,
  pullFactor: 1,
  landShare: 0.5,
  flow: 2e-3,
  density: 1.2,
  jetArea: null,
  jetAngleDegrees: 0,
};

describe("suction force", () => {
  it("is the depression on the cavity and on the land's share", () => {
    expect(suctionForce(input)).toBeCloseToRelative(600 * (4e-3 + 0.5 * 0.25 * 3e-3), 1e-14);
    expect(suctionForce({ ...input, pressure: 0 })).toBe(0);
  });

  it("carries the pull factor on the cavity's part alone", () => {
    const jet = { jetArea: 3e-4, jetAngleDegrees: 0 };
    expect(suctionForce({ ...input, pullFactor: 0.85 })).toBeCloseToRelative(
      0.85 * suctionForce(input),
      1e-14,
    );
    const thrust = (1.2 * 2e-3 ** 2) / 3e-4;
    expect(suctionForce({ ...input, ...jet, pullFactor: 0.85 })).toBeCloseToRelative(
      0.85 * suctionForce(input) + thrust,
      1e-14,
    );
  });

  // Momentum of the jet: ρQ²/A.
  it.each([
    [0, 1],
    [60, 0.5],
    [90, 0],
    [180, -1],
  ])("with a jet at %s° has %s of its thrust besides", (jetAngleDegrees, share) => {
    const jet = (1.2 * 2e-3 ** 2) / 3e-4;
    const thrust = suctionForce({ ...input, jetArea: 3e-4, jetAngleDegrees }) - suctionForce(input);
    expect(thrust).toBeCloseTo(share * jet, 14);
  });

  it.each([
    ["skirt.area", { area: -1 }],
    ["skirt.perimeter", { perimeter: Number.NaN }],
    ["skirt.land", { land: -1 }],
    ["vehicle.pullFactor", { pullFactor: 0 }],
    ["landShare", { landShare: -0.1 }],
    ["pressure", { pressure: -1 }],
    ["vehicle.jetArea", { jetArea: 0 }],
    ["air.density", { jetArea: 1e-4, density: 0 }],
    ["flow", { jetArea: 1e-4, flow: -1 }],
    ["vehicle.jetAngle", { jetArea: 1e-4, jetAngleDegrees: Number.NaN }],
  ])("refuses by %s what is %o", (quantity, change) => {
    expectOutOfRange(() => suctionForce({ ...input, ...change }), quantity);
  });
});

describe("land's share of the depression", () => {
  it("without friction is all, with nothing but friction half", () => {
    expect(landShare(500, 0)).toBe(1);
    expect(landShare(500, 500)).toBe(0.5);
  });

  it("where friction isn't known, or nothing pulls, is half", () => {
    expect(landShare(500, null)).toBe(0.5);
    expect(landShare(0, 0)).toBe(0.5);
  });

  // Pressure falls along the land in a straight line from Δp − Δp_f behind the inlet to Δp at the cavity: its mean, summed numerically.
  it("of a real gap is the mean of a straight line", () => {
    const gap = { perimeter: 0.25, height: 3e-4, land: 5e-3, lossSum: 1.5 };
    const air = { density: 1.2, viscosity: 1.8e-5 };
    const friction = gapFrictionPressure(gap, air, gapFlow(gap, air, 700));
    let sum = 0;
    for (let i = 0; i < 1000; i += 1) sum += 700 - friction * (1 - (i + 0.5) / 1000);
    expect(landShare(700, friction)).toBeCloseToRelative(sum / 1000 / 700, 1e-12);
  });

  it("refuses pressures below 0", () => {
    expectOutOfRange(() => landShare(-1, 0), "pressure");
    expectOutOfRange(() => landShare(1, -1), "frictionPressure");
  });
});
