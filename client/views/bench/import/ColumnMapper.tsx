import type { TestKind } from "../../../../shared/model/tests/index.ts";
import { isGood, readNumber } from "../../../../shared/units/readNumber.ts";
import { NumberField } from "../../../ui/NumberField.tsx";
import { ScrollTable } from "../../../ui/ScrollTable.tsx";
import { COMMON_SPEED } from "../record/numbers.ts";
import type { CsvTable } from "./csv.ts";
import { type ColumnMapping, mappingFor, unitChoices, unitUncertainty } from "./mapping.ts";
import type { ImportModel } from "./model.ts";
import { IGNORE, type Role, roleInList, rolesOf } from "./roles.ts";

interface ColumnMapperProps {
  readonly model: ImportModel;
  readonly table: CsvTable;
}

/** What each column of the file is, and in which unit: guessed from the header, always changeable. */
export function ColumnMapper({ model, table }: ColumnMapperProps) {
  const mapping = model.mapping.value;
  const put = (at: number, next: ColumnMapping) => {
    model.refused.value = new Map();
    model.mapping.value = mapping.map((column, i) => (i === at ? next : column));
  };
  const hasSpeed = mapping.some((column) => column.role === "speed");
  return (
    <section>
      <h2>Columns</h2>
      <ScrollTable label="Columns of the file">
        <table class="bench-mapping">
          <thead>
            <tr>
              <th scope="col">In the file</th>
              <th scope="col">First cell</th>
              <th scope="col">It is</th>
              <th scope="col">Unit</th>
            </tr>
          </thead>
          <tbody>
            {table.header.map((name, i) => (
              <MappingRow
                key={i}
                name={name}
                sample={table.lines[0]?.cells[i] ?? ""}
                column={mapping[i]}
                kind={model.kind}
                onChange={(next) => put(i, next)}
              />
            ))}
          </tbody>
        </table>
      </ScrollTable>
      {!hasSpeed && model.kind === "curve" && <CommonSpeed model={model} />}
    </section>
  );
}

interface MappingRowProps {
  readonly name: string;
  readonly sample: string;
  readonly column: ColumnMapping;
  readonly kind: TestKind;
  readonly onChange: (column: ColumnMapping) => void;
}

function MappingRow({ name, sample, column, kind, onChange }: MappingRowProps) {
  const units = unitChoices(kind, column.role, column.unit);
  const doubt = unitUncertainty(name, column, kind);
  const called = name === "" ? "column without a name" : name;
  return (
    <tr class={column.role === IGNORE ? "quiet" : ""}>
      <th scope="row">{called}</th>
      <td>{sample}</td>
      <td>
        <select
          aria-label={`What ${called} is`}
          value={column.role}
          onChange={(event) => onChange(mappingFor(event.currentTarget.value, name, kind))}
        >
          {rolesOf(kind).map((role: Role) => (
            <option key={role} value={role}>
              {roleInList(kind, role)}
            </option>
          ))}
        </select>
      </td>
      <td>
        {units.length > 0 && (
          <select
            aria-label={`Unit of ${called}`}
            value={column.unit}
            onChange={(event) => onChange({ ...column, unit: event.currentTarget.value })}
          >
            {units.map((unit) => (
              <option key={unit} value={unit}>
                {unit || "choose…"}
              </option>
            ))}
          </select>
        )}
        {doubt && <span class={column.unit === "" ? "field-error" : "quiet small"}> {doubt}</span>}
      </td>
    </tr>
  );
}

function CommonSpeed({ model }: { readonly model: ImportModel }) {
  const text = model.commonSpeed.value;
  const reading = text.trim() === "" ? null : readNumber(COMMON_SPEED, text);
  return (
    <div class="bench-field">
      <NumberField
        label="One speed for all points"
        hint="no column has it"
        error={reading && !isGood(reading) ? reading.message : null}
        spec={COMMON_SPEED}
        placeholder="as 24000 rpm"
        text={text}
        onText={(typed) => {
          model.commonSpeed.value = typed;
        }}
      />
    </div>
  );
}
