import { DataTable } from "#client/ui/DataTable.tsx";
import { SaveCsv } from "#client/ui/SaveCsv.tsx";
import { ScrollTable } from "#client/ui/ScrollTable.tsx";
import type { Shown } from "./shown.ts";

const table = () => ({
  columns: ["Attitude", "Margin, ×"],
  rows: [
    ["Wall 90°", { value: 2.117, uncertainty: 0.08 }],
    ["Ceiling 180°", { value: 2.546, uncertainty: 0.11 }],
  ],
});

/** Numbers in rows. */
export const TABLES: readonly Shown[] = [
  {
    component: "DataTable",
    state: "folded",
    drawn: <DataTable title="The picture as a table" table={table} />,
  },
  {
    component: "ScrollTable",
    state: "wider than its place",
    drawn: (
      <ScrollTable label="A wide table">
        <table>
          <tbody>
            <tr>
              {Array.from({ length: 40 }, (_, i) => (
                <td key={i} class="number">
                  {1000 + i}
                </td>
              ))}
            </tr>
          </tbody>
        </table>
      </ScrollTable>
    ),
  },
  {
    component: "SaveCsv",
    state: "at rest",
    drawn: <SaveCsv label="save the tests as CSV" name="tests.csv" make={() => Promise.resolve("")} />,
  },
];
