import type { LeakTest } from "../../model/tests/leak.ts";
import { toSI } from "../../units/quantity.ts";
import { type Book, findById } from "../book.ts";
import { leakPoints } from "../readings/leak.ts";
import { airOfDay, inUse } from "../readings/reading.ts";
import { SHIM } from "./pull.ts";
import { beside, OFF, type Slip, slipOf, UNIT } from "./slip.ts";
import { unusual } from "./usual.ts";

/** Suction of a cavity [Pa]. Common practice, no source. */
const SUCTION = { name: "pressure", low: 0.5, high: 4e4 } as const;
/** A narrow gap's friction lets less through than an open one, seldom less than this part of it [-]. Judgement. */
const LEAST_OF_OPEN = 0.05;

/** @returns readings of a leak test that may be slips: its flow beside that of the gap without any friction, P·h·√(2Δp/ρ) */
export function slipsOfLeak(book: Book, test: LeakTest): Slip[] {
  const skirt = findById(book.skirts, test.skirt)?.data;
  const roughness = findById(book.surfaces, test.surface)?.data.roughness ?? 0;
  const gap = (test.gap ? toSI(test.gap, "length") : (skirt?.gap ?? 0)) + roughness;
  const { density } = airOfDay(test.air);
  const rows = inUse(leakPoints(test)).flatMap(({ pressure, row }): Slip[] => {
    const { flow, platePressure } = test.rows[row];
    const open = (skirt?.perimeter ?? 0) * gap * Math.sqrt((2 * pressure) / density);
    return [
      ...unusual(`rows.${row}.pressure`, pressure, SUCTION),
      ...(platePressure
        ? unusual(`rows.${row}.platePressure`, toSI(platePressure, "pressure"), SUCTION)
        : []),
      ...(flow && open > 0
        ? slipOf({
            path: `rows.${row}.flow`,
            value: toSI(flow, "flow"),
            low: LEAST_OF_OPEN * open,
            high: open,
            slack: OFF,
            said: `the gap lets up to ${beside(open, "flow", flow)} through at this suction. ${UNIT}`,
          })
        : []),
    ];
  });
  return [...(test.gap ? unusual("gap", toSI(test.gap, "length"), SHIM) : []), ...rows];
}
