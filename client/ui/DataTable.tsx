import { formatFixed } from "../../shared/units/format.ts";
import type { Table } from "./table.ts";

const DECIMALS = 3;

/** A chart's numbers as a table that opens beside it. */
export function DataTable({ title, table }: { title: string; table: Table }) {
  return (
    <details class="data-table">
      <summary>{title}</summary>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reached by keyboard */}
      <section class="data-table-scroll" aria-label={title} tabIndex={0}>
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
      </section>
    </details>
  );
}

function shown(value: string | number | null): string {
  if (value === null) return "–";
  if (typeof value === "string") return value;
  return Number.isInteger(value) ? formatFixed(value, 0) : formatFixed(value, DECIMALS);
}
