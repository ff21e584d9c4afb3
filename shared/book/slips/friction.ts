import type { FrictionTest } from "../../model/tests/friction.ts";
import { formatQuantity } from "../../units/format.ts";
import { toSI } from "../../units/quantity.ts";
import { type Book, findById } from "../book.ts";
import { OFF, type Slip, slipOf, UNIT } from "./slip.ts";
import { unusual } from "./usual.ts";

/** Tilts at which wheels or skirts begin to slide [rad]. Common practice, no source. */
const TILT = { name: "angle", low: 0.05, high: 1.3 } as const;

function statedFriction(book: Book, { surface, contact, skirt }: FrictionTest): number | undefined {
  const on = findById(book.surfaces, surface)?.data;
  if (contact === "wheels") return on?.wheelFriction;
  return on?.skirtFriction ?? findById(book.skirts, skirt)?.data.friction;
}

/** @returns tilts that may be slips: beside the friction that the book states, or beside what is usual */
export function slipsOfFriction(book: Book, test: FrictionTest): Slip[] {
  const stated = statedFriction(book, test);
  return test.rows.flatMap(({ slid, setAside }, row) => {
    if (!slid || setAside !== undefined) return [];
    const [path, tilt] = [`rows.${row}.slid`, toSI(slid, "angle")];
    if (stated === undefined || !(stated > 0)) return unusual(path, tilt, TILT);
    const said = `the stated friction slides at ${formatQuantity(Math.atan(stated), "angle")}. ${UNIT}`;
    return slipOf({ path, value: Math.tan(tilt), low: stated, high: stated, slack: OFF, said });
  });
}
