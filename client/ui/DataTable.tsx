import { useState } from "preact/hooks";
import { formatFixed } from "../../shared/units/format.ts";
import { ScrollTable } from "./ScrollTable.tsx";
import type { Table } from "./table.ts";

const DECIMALS = 3;

export interface DataTableProps {
  readonly title: string;
  /** the table, or a way to make it once it is opened */
  readonly table: Table | (() => Table);
}

/** A chart's numbers as a table that opens beside it. */
export function DataTable({ title, table }: DataTableProps) {
  const [open, setOpen] = useState(false);
  return (
    <details class="data-table" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{title}</summary>
      {open && <Rows title={title} table={typeof table === "function" ? table() : table} />}
    </details>
  );
}

function Rows({ title, table }: { title: string; table: Table }) {
  return (
    <ScrollTable label={title}>
      <table>
        <thead>
          <tr>
            {table.columns.map((column) => (
              <th key={column} scope="col">
                {column}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {table.rows.map((row, i) => (
            <tr key={i}>
              {row.map((value, k) => (
                <td key={table.columns[k]}>{shown(value)}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollTable>
  );
}

function shown(value: string | number | null): string {
  if (value === null) return "–";
  if (typeof value === "string") return value;
  return Number.isInteger(value) ? formatFixed(value, 0) : formatFixed(value, DECIMALS);
}
