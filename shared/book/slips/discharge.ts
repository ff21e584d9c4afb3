import type { DischargeTest } from "../../model/tests/discharge.ts";
import { toSI } from "../../units/quantity.ts";
import { type Book, findById } from "../book.ts";
import { beside, OFF, type Slip, slipOf, UNIT } from "./slip.ts";
import { packVoltage } from "./voltage.ts";

/** Times its capacity an hour; more, and a cell is short-circuited [1/s]. Common practice, no source. */
const FASTEST = 100 / 3600;

/** @returns readings of a discharge test that may be slips, beside the pack's cells and capacity */
export function slipsOfDischarge(book: Book, test: DischargeTest): Slip[] {
  const pack = findById(book.packs, test.pack)?.data;
  if (!pack) return [];
  const series = test.across === "pack" ? pack.series : 1;
  const capacity = pack.cell.capacity * (test.across === "cell" ? 1 : pack.parallel);
  return test.rows.flatMap(({ charge, voltage, current, setAside }, row): Slip[] => {
    if (setAside !== undefined) return [];
    const at = (key: string) => `rows.${row}.${key}`;
    const holds = charge && `the pack holds ${beside(capacity, "charge", charge)}. ${UNIT}`;
    const most = FASTEST * capacity;
    return [
      ...(charge && holds
        ? slipOf({
            path: at("charge"),
            value: toSI(charge, "charge"),
            low: null,
            high: capacity,
            slack: OFF / 2,
            said: holds,
          })
        : []),
      ...packVoltage(at("voltage"), voltage, series),
      ...slipOf({
        path: at("current"),
        value: toSI(current, "current"),
        low: null,
        high: most,
        slack: 1,
        said: `${beside(most, "current", current)} would empty the pack in 36 s. ${UNIT}`,
      }),
    ];
  });
}
