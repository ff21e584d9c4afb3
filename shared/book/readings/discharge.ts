import type { DischargeReading } from "../../fit/dischargeFit.ts";
import type { DischargeTest } from "../../model/tests/discharge.ts";
import { toSI } from "../../units/quantity.ts";
import { maybe, type Reading } from "./reading.ts";

/** Charge drawn by each row [C]: as counted, else from current and time, the straight line between readings. */
function drawnByRow({ rows }: DischargeTest): number[] {
  const drawn: number[] = [];
  rows.forEach((row, i) => {
    const counted = maybe(row.charge, "charge");
    const before = rows[i - 1];
    if (counted !== undefined) drawn.push(counted);
    else if (!before) drawn.push(0);
    else {
      const span = (maybe(row.time, "time") ?? 0) - (maybe(before.time, "time") ?? 0);
      const mean = (toSI(row.current, "current") + toSI(before.current, "current")) / 2;
      drawn.push(drawn[i - 1] + Math.max(0, span) * mean);
    }
  });
  return drawn;
}

/**
 * A discharge test's rows, of one cell.
 *
 * @param test - as stored
 * @param pack - cells in series and parallel [-]
 * @returns charge drawn since full [C], voltage [V], current [A] of one cell
 */
export function dischargeReadings(
  test: DischargeTest,
  pack: { readonly series: number; readonly parallel: number },
): Reading<DischargeReading>[] {
  const series = test.across === "pack" ? pack.series : 1;
  const parallel = test.across === "cell" ? 1 : pack.parallel;
  const drawn = drawnByRow(test);
  return test.rows.map((row, index) => ({
    drawn: drawn[index] / parallel,
    voltage: toSI(row.voltage, "voltage") / series,
    current: toSI(row.current, "current") / parallel,
    row: index,
    setAside: row.setAside ?? null,
  }));
}
