import { decimalsFor, formatFixed } from "../../../../shared/units/format.ts";
import { ScrollTable } from "../../../ui/ScrollTable.tsx";
import { unitLabels } from "../record/numbers.ts";
import type { ColumnSpec } from "../record/spec.ts";
import type { Wire } from "./useWire.ts";
import type { WireColumn, WireMapping } from "./wireRows.ts";

const DIGITS = 5;
const HEADS = ["It says", "Now", "Peak", "It is", "Unit"];

const shown = (value: number): string => formatFixed(value, decimalsFor(value, DIGITS));

interface OfWire {
  readonly wire: Wire;
  /** those of the test that a name can be */
  readonly columns: readonly ColumnSpec[];
  readonly onChange: (name: string, to: WireColumn) => void;
}

export interface WireTableProps extends OfWire {
  readonly names: readonly string[];
  readonly mapping: WireMapping;
}

/** What an instrument says, live, and what each of its names is in the test. */
export function WireTable({ names, mapping, ...ofWire }: WireTableProps) {
  return (
    <ScrollTable label="What the instrument says">
      <table class="bench-mapping">
        <thead>
          <tr>
            {HEADS.map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {names.map((name) => (
            <WireRow key={name} name={name} to={mapping[name]} {...ofWire} />
          ))}
        </tbody>
      </table>
    </ScrollTable>
  );
}

interface WireRowProps extends OfWire {
  readonly name: string;
  readonly to: WireColumn;
}

function WireRow({ name, wire, to, columns, onChange }: WireRowProps) {
  const column = columns.find(({ key }) => key === to.column);
  const watched = wire.watched.get(name);
  return (
    <tr>
      <th scope="row">{name}</th>
      <td>
        {shown(wire.values.get(name) ?? 0)} {watched?.plateau() && <span class="quiet small">steady</span>}
      </td>
      <td>{watched && shown(watched.peak)}</td>
      <td>
        <select
          aria-label={`What ${name} is`}
          value={to.column}
          onChange={(event) => {
            const key = event.currentTarget.value;
            const dimension = columns.find((each) => each.key === key)?.dimension;
            onChange(name, { column: key, unit: dimension ? unitLabels(dimension, "")[1] : "" });
          }}
        >
          <option value="">not used</option>
          {columns.map(({ key, label }) => (
            <option key={key} value={key}>
              {label.toLowerCase()}
            </option>
          ))}
        </select>
      </td>
      <td>
        {column?.dimension && (
          <select
            aria-label={`Unit of ${name}`}
            value={to.unit}
            onChange={(event) => onChange(name, { ...to, unit: event.currentTarget.value })}
          >
            {unitLabels(column.dimension, to.unit).map((unit) => (
              <option key={unit} value={unit}>
                {unit}
              </option>
            ))}
          </select>
        )}
      </td>
    </tr>
  );
}
