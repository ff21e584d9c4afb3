import { bleedFlow } from "../../fit/bleed.ts";
import type { Plate } from "../../model/tests/common.ts";
import { findRoot } from "../../numeric/root.ts";
import type { Air } from "../../physics/air.ts";
import { toSI } from "../../units/quantity.ts";
import { type Book, testsOf } from "../book.ts";
import { withPlate } from "../newestFirst.ts";

/** A plate that can be drilled in ten minutes, taken where the book knows none. Judgement. */
const USUAL: Plate = {
  holes: [
    {
      diameter: { value: 4, unit: "mm" },
      thickness: { value: 3, unit: "mm" },
      count: 12,
      edge: "sharp",
    },
    {
      diameter: { value: 10, unit: "mm" },
      thickness: { value: 3, unit: "mm" },
      count: 36,
      edge: "sharp",
    },
  ],
};
/** Drops over a plate that a cheap sensor reads [Pa]. Judgement. */
const [LEAST_DROP, MOST_DROP, GOOD_DROP] = [1e-3, 2e4, 200];

/** @returns the plate of the newest test that used one, else a usual one */
export function plateOf(book: Book): Plate {
  const newest = { ...book, tests: withPlate(book.tests).slice(0, 1) };
  const [test] = [...testsOf(newest, "leak"), ...testsOf(newest, "curve")];
  return test?.data.plate ?? USUAL;
}

/** @returns flow through the open holes of a plate [m³/s] */
export function flowThrough(plate: Plate, open: readonly number[], air: Air, pressure: number): number {
  const holes = plate.holes.flatMap((hole, k) =>
    open[k] > 0
      ? [
          {
            diameter: toSI(hole.diameter, "length"),
            thickness: toSI(hole.thickness, "length"),
            count: open[k],
            edge: hole.edge,
            dischargeCoefficient: hole.dischargeCoefficient,
          },
        ]
      : [],
  );
  return holes.length === 0 || !(pressure > 0) ? 0 : bleedFlow({ holes, air, pressure }).flow;
}

/** @returns how many holes of each kind are open at so many shares of the whole plate, from none to all */
export function openStates(plate: Plate, states: number): number[][] {
  const total = plate.holes.reduce((sum, { count }) => sum + count, 0);
  return Array.from({ length: states }, (_, i) => {
    let left = Math.round((total * i) / (states - 1));
    return plate.holes.map(({ count }) => {
      const open = Math.min(count, left);
      left -= open;
      return open;
    });
  });
}

/** @returns holes to open, and the drop over them, for a flow [Pa]; null where the plate is too small for it */
export function dropFor(plate: Plate, air: Air, flow: number): { open: number[]; drop: number } | null {
  const total = plate.holes.reduce((sum, { count }) => sum + count, 0);
  const states = openStates(plate, total + 1).slice(1);
  const open =
    states.find((state) => flowThrough(plate, state, air, GOOD_DROP) >= flow) ?? states[states.length - 1];
  const excess = (drop: number) => flowThrough(plate, open, air, drop) - flow;
  if (excess(LEAST_DROP) > 0 || excess(MOST_DROP) < 0) return null;
  return { open, drop: findRoot(excess, LEAST_DROP, MOST_DROP).root };
}
