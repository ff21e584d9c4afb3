import { useState } from "preact/hooks";
import { ScrollTable } from "./ScrollTable.tsx";
import type { Table } from "./table.ts";
import { shownRows } from "./tableText.ts";

export interface DataTableProps {
  readonly title: string;
  /** makes the table once it is opened */
  readonly table: () => Table;
}

/** A chart's numbers as a table that opens beside it. */
export function DataTable({ title, table }: DataTableProps) {
  const [open, setOpen] = useState(false);
  return (
    <details class="data-table" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{title}</summary>
      {open && <Rows title={title} table={table()} />}
    </details>
  );
}

function Rows({ title, table }: { title: string; table: Table }) {
  const isNumber = table.columns.map((_, k) => table.rows.some((row) => !isText(row[k])));
  const look = (k: number) => (isNumber[k] ? "number" : undefined);
  return (
    <ScrollTable label={title}>
      <table>
        <thead>
          <tr>
            {table.columns.map((column, k) => (
              <th key={column} scope="col" class={look(k)}>
                {column}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {shownRows(table).map((row, i) => (
            <tr key={i}>
              {row.map((text, k) => (
                <td key={table.columns[k]} class={look(k)}>
                  {text}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollTable>
  );
}

const isText = (cell: Table["rows"][number][number]) => cell === null || typeof cell === "string";
