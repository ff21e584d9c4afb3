import type { RideHeightTest } from "../../model/tests/rideHeight.ts";
import { toSI } from "../../units/quantity.ts";
import type { Book } from "../book.ts";
import { withMass } from "../mass/withMass.ts";
import { beside, OFF, type Slip, slipOf, UNIT } from "./slip.ts";
import { unusual } from "./usual.ts";

/** Heights of a lip over its surface [m]. Common practice, no source. */
const HEIGHT = { name: "length", low: 2e-5, high: 8e-3 } as const;
/** Weights that are put on a vehicle are about its own, or less [-]. Judgement. */
const TIMES_ITS_WEIGHT = 2;

/** Heaviest vehicle on this running gear [N]; null where no build has it. */
function weightOn(book: Book, gear: string): number | null {
  const masses = book.builds.flatMap(({ data }) =>
    data.gear === gear ? [withMass(book, data).vehicle.mass] : [],
  );
  return masses.length === 0 ? null : Math.max(...masses) * toSI({ value: 1, unit: "kg" }, "load");
}

/** @returns loads far beyond the vehicles on that running gear, and heights that no lip has */
export function slipsOfRideHeight(book: Book, test: RideHeightTest): Slip[] {
  const weight = weightOn(book, test.gear);
  return test.rows.flatMap(({ load, height, setAside }, row): Slip[] => {
    if (setAside !== undefined) return [];
    const heavy = weight === null ? null : TIMES_ITS_WEIGHT * weight;
    const said = `the vehicle weighs ${beside(weight ?? 0, "load", load)}. ${UNIT}`;
    return [
      ...slipOf({
        path: `rows.${row}.load`,
        value: toSI(load, "load"),
        low: null,
        high: heavy,
        slack: OFF / 2,
        said,
      }),
      ...unusual(`rows.${row}.height`, toSI(height, "length"), HEIGHT),
    ];
  });
}
