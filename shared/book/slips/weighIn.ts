import type { WeighInTest } from "../../model/tests/weighIn.ts";
import { STANDARD_GRAVITY } from "../../physics/constants.ts";
import { toSI } from "../../units/quantity.ts";
import { type Book, findById } from "../book.ts";
import { withMass } from "../mass/withMass.ts";
import { beside, OFF, type Slip, slipOf, UNIT } from "./slip.ts";
import { unusual } from "./usual.ts";

/** Weights of parts and of vehicles of this kind [N]. Common practice, no source. */
const WEIGHT = { name: "load", low: 2e-3, high: 200 } as const;

/** @returns readings far from what the build states, or from what is usual */
export function slipsOfWeighIn(book: Book, test: WeighInTest): Slip[] {
  const build = test.weighed === "build" ? findById(book.builds, test.build) : null;
  const weight = build && withMass(book, build.data).vehicle.mass * STANDARD_GRAVITY;
  return test.rows.flatMap(({ reading, setAside }, row) => {
    if (setAside !== undefined) return [];
    const [path, value] = [`rows.${row}.reading`, toSI(reading, "load")];
    if (weight === null) return unusual(path, value, WEIGHT);
    const said = `the build says ${beside(weight, "load", reading)}. ${UNIT}`;
    return slipOf({ path, value, low: weight, high: weight, slack: OFF, said });
  });
}
