import { type Book, findById } from "../../../../shared/book/book.ts";
import { dischargeReadings } from "../../../../shared/book/readings/discharge.ts";
import { inUse } from "../../../../shared/book/readings/reading.ts";
import { type DischargeFit, fitDischarge } from "../../../../shared/fit/dischargeFit.ts";
import type { DischargeTest } from "../../../../shared/model/tests/discharge.ts";
import { formatQuantity, inUnit } from "../../../../shared/units/format.ts";
import { unitOf } from "../../../../shared/units/showing.ts";
import {
  attempt,
  digits,
  type Figure,
  NOTHING_YET,
  type RowName,
  type Running,
  withError,
} from "./result.ts";
import { dischargeSketch } from "./sketches.ts";

function figuresOf(fit: DischargeFit): Figure[] {
  const { curve, resistance, resistanceError, resistanceFrom, capacity, capacityFrom } = fit;
  const { resistanceByCharge } = fit;
  const shown = (ohms: number) => inUnit(ohms, "smallResistance");
  const error = resistanceError === null ? null : shown(resistanceError);
  const full = curve[curve.length - 1][1];
  return [
    {
      label: "Cell resistance",
      text: `${withError(shown(resistance), error)} ${unitOf("smallResistance")}`,
      ...(resistanceFrom === "known" ? { mark: "stated" as const } : {}),
    },
    ...(resistanceByCharge ?? []).slice(0, 1).map((emptiest) => ({
      label: `The same at ${digits(100 * emptiest.charge)} % charge`,
      text: `${withError(shown(emptiest.resistance), shown(emptiest.standardError))} ${unitOf("smallResistance")}`,
    })),
    {
      label: "Cell capacity",
      text: formatQuantity(capacity, "charge"),
      ...(capacityFrom === "known" ? { mark: "stated" as const } : {}),
    },
    { label: "Open-circuit, a cell", text: `${digits(full)} V full, ${digits(curve[0][1])} V empty` },
  ];
}

/** Resistance, capacity and open-circuit voltage so far, or what to measure next. */
export function runDischarge(test: DischargeTest, names: readonly RowName[], book: Book): Running {
  const pack = findById(book.packs, test.pack ?? "")?.data;
  if (!pack) return { ...NOTHING_YET, next: "Choose the pack: its cells in series and parallel are needed." };
  const rows = dischargeReadings(test, pack);
  if (rows.length === 0)
    return { ...NOTHING_YET, next: "Type a first reading: the full pack at rest, nothing drawn yet." };
  const byRow = new Map(rows.map((row) => [names[row.row].key, `${digits(row.voltage)} V a cell`]));
  const { resistance: knownResistance, capacity: knownCapacity } = pack.cell;
  const runs = [{ readings: inUse(rows), emptied: test.end === "empty" }];
  const { found: fit, next } = attempt(() => fitDischarge({ runs, knownResistance, knownCapacity }));
  return {
    figures: fit ? figuresOf(fit) : [],
    byRow,
    next,
    notes: fit?.warnings.map((warning) => warning.message) ?? [],
    sketch: dischargeSketch(rows, fit, names),
  };
}
