import { describe, expect, it } from "vitest";
import { contoursOf } from "#client/charts/draw/contours.ts";
import type { Field } from "#client/charts/model/field.ts";

const COLUMNS = 81;
const ROWS = 61;

/** r² = x² + y² over −2…2 by −1.5…1.5: its contours are circles of known radius. */
function fieldOf(value: (x: number, y: number) => number, steps: readonly number[]): Field {
  const values = Array.from({ length: COLUMNS * ROWS }, (_, i) =>
    value(-2 + (4 * (i % COLUMNS)) / (COLUMNS - 1), -1.5 + (3 * Math.floor(i / COLUMNS)) / (ROWS - 1)),
  );
  return {
    key: "field",
    x: [-2, 2],
    y: [-1.5, 1.5],
    columns: COLUMNS,
    rows: ROWS,
    values,
    steps,
    words: (step) => `${step} ×`,
  };
}

/** A hundred pixels a unit, y upwards from the plot's bottom. */
const at = (x: number, y: number): readonly [number, number] => [100 * (x + 2), 100 * (1.5 - y)];

describe("contour lines of a field", () => {
  it("of x² + y² at 1 are the unit circle about the plot's middle, to a hundredth", () => {
    const [contour] = contoursOf(
      fieldOf((x, y) => -(x * x) - y * y, [-1]),
      at,
    );
    expect(contour.rings).toHaveLength(1);
    for (const [x, y] of contour.rings[0]) expect(Math.hypot(x - 200, y - 150) / 100).toBeCloseTo(1, 2);
    expect(contour.words).toBe("-1 ×");
  });

  it("lie one in another, for rising steps", () => {
    const sizes = contoursOf(
      fieldOf((x, y) => -Math.hypot(x, y), [-1.2, -0.8, -0.4]),
      at,
    ).map(({ rings }) => Math.max(...rings[0].map(([x, y]) => Math.hypot(x - 200, y - 150))));
    expect(sizes[0]).toBeGreaterThan(sizes[1]);
    expect(sizes[1]).toBeGreaterThan(sizes[2]);
  });

  it("are upright lines where the field rises along x alone: at its own place on the axis", () => {
    const [contour] = contoursOf(
      fieldOf((x) => x, [0.5]),
      at,
    );
    const inside = contour.rings[0].filter(([x, y]) => x < 399 && y > 1 && y < 299);
    for (const [x] of inside) expect(x).toBeCloseTo(250, 6);
  });

  it("surround nothing where the quantity isn't known", () => {
    const [contour] = contoursOf(
      fieldOf(() => Number.NaN, [0]),
      at,
    );
    expect(contour.rings).toEqual([]);
  });
});
