import { STANDARD_GRAVITY } from "../shared/physics/constants.ts";
import { noiseSource } from "./noise.ts";
import { GEARS } from "./truth.ts";

/** Steps of the feeler gauges, and what reading them adds [m]. */
const STEP = 5e-5;
const NOISE = 1.2e-5;
const SEED = 61;
/** Decimals of a height in millimetres. */
const DECIMALS = 2;

/** Readings of the demo's ride-height tests, heights in steps of the gauges. */
export function rideHeights(): unknown[] {
  const { read } = noiseSource(SEED);
  return Object.entries(GEARS).map(([gear, { stiffness, gap, date, name, loads }]) => ({
    kind: "ride-height",
    title: `Feeler gauges under the lip, ${name.toLowerCase()}`,
    date,
    gear,
    instruments: { height: { absolute: { value: 0.02, unit: "mm" } }, load: { percent: 1 } },
    rows: loads.map((grams) => {
      const height = read(gap - (grams * STANDARD_GRAVITY) / 1000 / stiffness, 0, STEP, NOISE);
      return {
        load: { value: grams, unit: "g" },
        height: { value: Number((1000 * Math.max(0, height)).toFixed(DECIMALS)), unit: "mm" },
      };
    }),
    note: "Invented for the demo.",
  }));
}
