import { formatQuantity } from "../../units/format.ts";
import { type TypedQuantity, toSI } from "../../units/quantity.ts";
import { OFF, type Slip, slipOf, UNIT } from "./slip.ts";

/** Of one cell, from flat to full, any chemistry. Common practice, no source [V]. */
const CELL = { low: 1, high: 4.4 } as const;

/** @returns a voltage as a slip where so many cells in series can't make it; none where they aren't known */
export function packVoltage(path: string, typed: TypedQuantity, series: number | null): Slip[] {
  if (series === null) return [];
  const [low, high] = [series * CELL.low, series * CELL.high];
  const cells = series === 1 ? "one cell makes" : `${series} cells make`;
  const said = `${cells} ${formatQuantity(low, "voltage", { digits: 2 })} to ${formatQuantity(high, "voltage", { digits: 2 })}. ${UNIT}`;
  return slipOf({ path, value: toSI(typed, "voltage"), low, high, slack: OFF / 2, said });
}
