import type { LeakTest } from "../../model/tests/leak.ts";
import { toSI } from "../../units/quantity.ts";
import { plateFlow } from "./plateFlow.ts";
import { airOfDay, maybe, type Reading } from "./reading.ts";

/** @returns a leak test's points: suction [Pa] and flow [m³/s], the flow from a plate in series where it was the meter */
export function leakPoints(test: LeakTest): Reading<{ pressure: number; flow: number }>[] {
  const air = airOfDay(test.air);
  return test.rows.map((row, index) => {
    const drop = maybe(row.platePressure, "pressure") ?? 0;
    const flow =
      test.flowFrom === "known-flow"
        ? (maybe(row.flow, "flow") ?? 0)
        : plateFlow(test.plate, row.open, air, drop).flow;
    return { pressure: toSI(row.pressure, "pressure"), flow, row: index, setAside: row.setAside ?? null };
  });
}
