import { dimension } from "../../../../shared/units/dimensions.ts";
import { hasPlate } from "../record/kinds.ts";
import { unitLabels } from "../record/numbers.ts";
import type { ColumnSpec } from "../record/spec.ts";
import { chooseUnit, type FormModel, unitOf } from "./model.ts";

/** The names of the columns, with the unit meant in each. */
export function RowHeads({
  form,
  columns,
}: {
  readonly form: FormModel;
  readonly columns: readonly ColumnSpec[];
}) {
  return (
    <thead>
      <tr>
        <th scope="col" class="bench-number">
          <span class="visually-hidden">Number</span>
        </th>
        {columns.map((column) => (
          <ColumnHead key={column.key} form={form} column={column} />
        ))}
        {hasPlate(form.spec, form.draft.value.fields) && <OpenHeads form={form} />}
        <th scope="col" class="bench-so-far">
          So far
        </th>
        <th scope="col" class="bench-actions">
          <span class="visually-hidden">What to do with the row</span>
        </th>
      </tr>
    </thead>
  );
}

function ColumnHead({ form, column }: { readonly form: FormModel; readonly column: ColumnSpec }) {
  const { dimension: name } = column;
  const present = name === null ? "" : unitOf(form, column.key, name);
  return (
    <th scope="col">
      {column.label}
      {column.hint && <span class="bench-column-hint">{column.hint}</span>}
      {name !== null && (
        <select
          class="bench-unit"
          aria-label={`${column.label}: unit meant where none is typed`}
          title={`The unit meant where none is typed; "${dimension(name).example}" is read as well`}
          value={present}
          onChange={(event) => chooseUnit(form, column.key, event.currentTarget.value)}
        >
          {unitLabels(name, present).map((label) => (
            <option key={label} value={label}>
              {label}
            </option>
          ))}
        </select>
      )}
    </th>
  );
}

function OpenHeads({ form }: { readonly form: FormModel }) {
  return form.draft.value.holes.map((hole) => (
    <th scope="col" key={hole.key}>
      Open
      <span class="bench-column-hint">
        of {hole.count || "?"} × {hole.diameter || "?"}
      </span>
    </th>
  ));
}
