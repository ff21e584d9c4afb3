import type { Cause } from "./causes.ts";
import { type CsvTable, readCell } from "./csv.ts";
import type { ColumnMapping } from "./mapping.ts";
import { IGNORE } from "./roles.ts";
import type { Condition } from "./select.ts";

/** What could be set otherwise so that lines are no longer skipped. */
export type Change =
  | { readonly what: "column"; readonly at: number; readonly column: ColumnMapping }
  | { readonly what: "decimal"; readonly decimal: "." | "," }
  | { readonly what: "only"; readonly condition: Condition };

export interface Cure {
  /** on its button */
  readonly label: string;
  readonly change: Change;
}

const negated = (times: string | undefined): string => {
  const typed = times?.trim() ?? "";
  if (typed === "") return "-1";
  return typed.startsWith("-") ? typed.slice(1) : `-${typed}`;
};

function columnCures({ trouble, line }: Cause, at: number, column: ColumnMapping, table: CsvTable): Cure[] {
  const name = table.header[at];
  const leave: Cure = {
    label: `Leave “${name}” out`,
    change: { what: "column", at, column: { role: IGNORE, unit: "" } },
  };
  const above: Cure = {
    label: `Read only lines where “${name}” is above 0`,
    change: { what: "only", condition: { column: at, text: "> 0" } },
  };
  if (trouble === "sign" && readCell(line.cells[at] ?? "", table.decimal) === 0) return [above, leave];
  if (trouble === "sign")
    return [
      {
        label: `Turn the sign of “${name}”`,
        change: { what: "column", at, column: { ...column, times: negated(column.times) } },
      },
      above,
      leave,
    ];
  if (trouble === "empty")
    return [
      {
        label: `Read only lines where “${name}” is not empty`,
        change: { what: "only", condition: { column: at, text: "not empty" } },
      },
      leave,
    ];
  const other = table.decimal === "," ? "." : ",";
  const reads = trouble === "number" && readCell(line.cells[at] ?? "", other) !== null;
  const decimals: Cure = {
    label: `Read decimals by ${other === "," ? "comma" : "point"}`,
    change: { what: "decimal", decimal: other },
  };
  return reads ? [decimals, leave] : [leave];
}

/** @returns what would cure the lines that a cause skips; empty where only another file would */
export function curesOf(cause: Cause, mapping: readonly ColumnMapping[], table: CsvTable): Cure[] {
  const { column: at } = cause;
  if (at === null || mapping[at] === undefined) return [];
  return columnCures(cause, at, mapping[at], table);
}

/** @returns what may cure a cause that no button does, in words; null where one does */
export function adviceOn({ trouble }: Cause): string | null {
  if (trouble !== "cells") return null;
  return "Choose above what stands between the cells, or the line with the columns' names.";
}
