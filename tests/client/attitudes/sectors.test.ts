import { describe, expect, it } from "vitest";
import { sectorsOf } from "#client/views/attitudes/sectors.ts";
import { type State, standAt } from "#client/views/attitudes/stand.ts";
import { rigidPull } from "#shared/physics/hold/pull.ts";
import type { Vehicle } from "#shared/physics/hold/vehicle.ts";
import { FLAT } from "./vehicle.ts";

const DEGREES = 180 / Math.PI;

function sectors(vehicle: Vehicle, state: State) {
  const at = (angle: number) => standAt(vehicle, rigidPull(10), angle);
  return sectorsOf(
    Array.from({ length: 181 }, (_, angle) => at(angle)),
    state,
    at,
  );
}

describe("sectorsOf", () => {
  it("changes from no pull to slide at arctan μ, with friction alone, and stays there to the ceiling", () => {
    const [none, slide, ...rest] = sectors(FLAT, "parked");
    expect(none).toMatchObject({ from: 0, mode: null });
    expect(none.to).toBeCloseTo(Math.atan(0.8) * DEGREES, 2);
    expect(slide).toEqual({ from: none.to, to: 180, mode: "slide" });
    expect(rest).toEqual([]);
  });

  it("begins to need pull for climbing where tan θ = μ − c_rr, with rolling resistance, and climb governs", () => {
    const [none, climb] = sectors({ ...FLAT, rollingResistance: 0.1 }, "driving");
    expect(none.to).toBeCloseTo(Math.atan(0.7) * DEGREES, 2);
    expect(climb.mode).toBe("climb");
  });

  it("meets without a gap and covers floor to ceiling, with a tall vehicle that tips as well", () => {
    const tall = sectors({ ...FLAT, cgHeight: 0.06, wheelFriction: 1 }, "parked");
    expect(tall[0].from).toBe(0);
    expect(tall.at(-1)?.to).toBe(180);
    tall.slice(1).forEach((each, i) => {
      expect(each.from).toBe(tall[i].to);
    });
    expect(tall.map((each) => each.mode)).toContain("tip");
  });

  it("tips where the line of the weight leaves the lower axle, with tan θ = b/h, before it slides", () => {
    const [none, tip] = sectors({ ...FLAT, cgHeight: 0.1, wheelFriction: 1 }, "parked");
    expect(none.to).toBeCloseTo(Math.atan(0.05 / 0.1) * DEGREES, 2);
    expect(tip.mode).toBe("tip");
  });
});
