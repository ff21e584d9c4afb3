import type { TestKind } from "../../../../shared/model/tests/index.ts";
import { exampleOf, isGood, readNumber } from "../../../../shared/units/readNumber.ts";
import { NumberField } from "../../../ui/NumberField.tsx";
import { ScrollTable } from "../../../ui/ScrollTable.tsx";
import { COMMON_SPEED } from "../record/numbers.ts";
import type { CsvTable } from "./csv.ts";
import { type ColumnMapping, mappingFor, unitChoices, unitUncertainty } from "./mapping.ts";
import type { ImportModel } from "./model.ts";
import { IGNORE, type Role, roleInList, rolesOf } from "./roles.ts";
import { guessColumns } from "./takeIn.ts";

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
  const first = table.lines.at(0).cells;
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
              <th scope="col">Minus</th>
              <th scope="col">Times</th>
            </tr>
          </thead>
          <tbody>
            {table.header.map((name, i) => (
              <MappingRow
                key={i}
                name={name}
                sample={first[i] ?? ""}
                column={mapping[i]}
                kind={model.kind}
                onChange={(next) => put(i, next)}
              />
            ))}
          </tbody>
        </table>
      </ScrollTable>
      <Remembered model={model} table={table} />
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
      <Adjusted called={called} column={column} isQuantity={units.length > 0} onChange={onChange} />
    </tr>
  );
}

interface AdjustedProps {
  readonly called: string;
  readonly column: ColumnMapping;
  readonly isQuantity: boolean;
  readonly onChange: (column: ColumnMapping) => void;
}

/** What is taken off a column's readings, and what they are multiplied by. */
function Adjusted({ called, column, isQuantity, onChange }: AdjustedProps) {
  if (!isQuantity)
    return (
      <>
        <td />
        <td />
      </>
    );
  const { minus = "", times = "" } = column;
  return (
    <>
      <td>
        <input
          type="text"
          class="bench-adjust"
          aria-label={`Taken off ${called}`}
          title='A tare in the same unit, a time of day, or "first": what the first line of each test has'
          placeholder="0"
          value={minus}
          onInput={(event) => onChange({ ...column, minus: event.currentTarget.value })}
        />
      </td>
      <td>
        <input
          type="text"
          class="bench-adjust"
          aria-label={`Factor on ${called}`}
          title='A factor, as "-1" to turn the sign, "1/7" for an electrical speed over seven pole pairs'
          placeholder="1"
          value={times}
          onInput={(event) => onChange({ ...column, times: event.currentTarget.value })}
        />
      </td>
    </>
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
        placeholder={`as ${exampleOf(COMMON_SPEED)}`}
        text={text}
        onText={(typed) => {
          model.commonSpeed.value = typed;
        }}
      />
    </div>
  );
}

/** Says that the columns are read as in an earlier file, and undoes that; says which signs were turned. */
function Remembered({ model, table }: ColumnMapperProps) {
  if (model.remembered.value)
    return (
      <p class="quiet">
        Read as in the last file with these columns.{" "}
        <button type="button" class="plain" onClick={() => guessColumns(model, table, false)}>
          Guess anew
        </button>
      </p>
    );
  const turned = model.mapping.value.flatMap(({ times }, i) =>
    times === "-1" ? [`“${table.header[i]}”`] : [],
  );
  if (turned.length === 0) return null;
  return <p class="quiet">No reading in {turned.join(", ")} is above 0: the sign is turned.</p>;
}
