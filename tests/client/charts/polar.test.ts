import { describe, expect, it } from "vitest";
import { arcPath, polarLayout } from "#client/charts/draw/polar/layout.ts";
import type { PolarPlot } from "#client/charts/model/polar.ts";
import { polarPicture } from "#client/charts/polar.ts";

const SIZE = { width: 900, height: 800 };
const DEGREES = Array.from({ length: 181 }, (_, angle) => angle);

const plot: PolarPlot = {
  axis: { label: "pull, g", to: 1000 },
  spokes: [],
  sectors: [],
  rimNames: [],
  stops: DEGREES.toReversed().map((angle) => ({ key: String(angle), x: angle, y: 500 })),
};

describe("polarLayout, the plane of the half disc", () => {
  const layout = polarLayout(plot, SIZE);
  const { radius } = layout;

  // A sketch on paper: floor below the centre, wall to its right, ceiling above it.
  it.each([
    [0, 0, 2 * radius],
    [90, radius, radius],
    [180, 0, 0],
  ])("puts the rim at %s° where the sketch has it", (angle, x, y) => {
    const [px, py] = layout.at(angle, 1000);
    expect(px).toBeCloseTo(x, 9);
    expect(py).toBeCloseTo(y, 9);
  });

  it("breaks a line beyond the rim, shows what lies on it, and holds a name that lies within", () => {
    expect(layout.at(90, 1001)[0]).toBeNaN();
    expect(layout.shows(...layout.at(37, 1000))).toBe(true);
    expect(layout.shows(Number.NaN, Number.NaN)).toBe(false);
    expect(layout.holds({ x: 10, y: radius, width: 60, height: 17 })).toBe(true);
    expect(layout.holds({ x: radius - 60, y: radius, width: 60, height: 17 })).toBe(false);
    expect(layout.holds({ x: 0, y: 2 * radius - 20, width: 60, height: 17 })).toBe(false);
  });

  it("draws an arc from one angle to the other about the centre, counterclockwise on the screen", () => {
    expect(arcPath(layout, 100, 0, 180)).toMatch(/^M0,\d+(\.\d+)?A100,100 0 0 0 /);
  });
});

describe("polarPicture, read by angle", () => {
  const drawn = polarPicture(plot)(SIZE);
  const layout = polarLayout(plot, SIZE);
  const { left, top } = layout.margin;
  const pointer = (angle: number, pull: number) => {
    const [x, y] = layout.at(angle, pull);
    return drawn.under({ x: x + left, y: y + top }, 18)?.key ?? null;
  };

  it("means the nearest degree, wherever along it the pointer is, and nothing off the disc", () => {
    expect(pointer(44.4, 120)).toBe("44");
    expect(pointer(128, 990)).toBe("128");
    expect(drawn.under({ x: left + layout.radius + 100, y: top }, 18)).toBeNull();
    expect(drawn.under({ x: left - 40, y: top + layout.radius }, 18)).toBeNull();
  });

  it("goes from floor to ceiling, and lays its hairline from the centre to the rim through what is read", () => {
    expect(drawn.spots().map(({ key }) => key)).toEqual(DEGREES.map(String));
    const line = drawn.hairline?.(drawn.spots()[90]);
    expect(line?.from).toEqual({ x: left, y: top + layout.radius });
    expect(line?.to.x).toBeCloseTo(left + layout.radius, 9);
    expect(line?.to.y).toBeCloseTo(top + layout.radius, 9);
  });
});
