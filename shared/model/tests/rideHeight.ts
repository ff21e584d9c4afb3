import { z } from "zod";
import { type TypedQuantity, toSI } from "../../units/quantity.ts";
import { TESTS } from "../limits.ts";
import { quantity } from "../quantity.ts";
import { reference } from "../reference.ts";
import { type Inlined, instrument, setAside, testHead } from "./common.ts";

export const rideHeightRow = z.strictObject({
  load: quantity("load", TESTS["ride-height"].rows.load).describe(
    "on the vehicle beside its own weight; 0 for the vehicle alone, below 0 where a scale lifts it",
  ),
  height: quantity("length", TESTS["ride-height"].rows.height).describe(
    "of the lip over the surface; 0 where the skirt touches",
  ),
  setAside,
});

type Loaded = { readonly load: TypedQuantity };

/** @returns why readings show no stiffness, all at one load; null where they may */
export function loadProblem(rows: readonly Loaded[]): string | null {
  const loads = rows.map(({ load }) => toSI(load, "load"));
  if (rows.length === 0 || loads.some((load) => load !== loads[0])) return null;
  const { value, unit } = rows[0].load;
  return `Every height was read at ${value} ${unit}; allowed: two loads or more that differ, for example "0 g" and "300 g".`;
}

/** A load that can't be read is refused by itself. */
function checkLoads(rows: readonly Loaded[], context: z.RefinementCtx): void {
  if (!rows.every(({ load }) => quantity("load").safeParse(load).success)) return;
  const message = loadProblem(rows);
  if (message !== null) context.addIssue({ code: "custom", path: [], message });
}

/** Ride-height test: the height of the lip over the surface by the load on the vehicle, fan off. */
export const rideHeightTest = z.strictObject({
  kind: z.literal("ride-height"),
  ...testHead,
  gear: reference("gears").describe("the running gear"),
  instruments: z
    .strictObject({ height: instrument("length").optional(), load: instrument("load").optional() })
    .default({}),
  rows: z
    .array(rideHeightRow)
    .min(1)
    .max(1000)
    .superRefine((rows, context) => checkLoads(rows, context)),
});

/** As fits read it: whatever it names of the book is described in its place. */
export type RideHeightTest = Inlined<z.output<typeof rideHeightTest>>;
