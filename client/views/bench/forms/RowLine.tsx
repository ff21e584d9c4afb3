import { useId } from "preact/hooks";
import { anchorOf } from "../../../ui/anchor.ts";
import { FieldError, inputOf } from "../../../ui/Field.tsx";
import { NumberInput } from "../../../ui/NumberField.tsx";
import { useSaid } from "../../../ui/useSaid.ts";
import { type DraftRow, withoutRow, withRow } from "../record/draft.ts";
import { hasPlate } from "../record/kinds.ts";
import { cellNumber, openNumber } from "../record/numbers.ts";
import type { ColumnSpec } from "../record/spec.ts";
import { change, type FormModel, leave, leaveCell, typeCell, unitOf } from "./model.ts";

interface RowLineProps {
  readonly form: FormModel;
  readonly row: DraftRow;
  readonly index: number;
  /** its readings are shown as a hint, never filled in */
  readonly before: DraftRow | null;
  readonly columns: readonly ColumnSpec[];
  readonly soFar: string;
}

/** Rows that change with another one aren't said. */
const isTypedIn = ({ key }: DraftRow): boolean =>
  document.activeElement?.closest(`[data-row="${key}"]`) != null;

/** One row of readings, with what it says alone, and the way to set it aside. */
export function RowLine({ form, row, index, before, columns, soFar }: RowLineProps) {
  const name = `${form.spec.row} ${index + 1}`;
  const says = (key: string) => form.shown.value.get(`rows.${row.key}.${key}`);
  useSaid(isTypedIn(row) ? soFar : null);
  const wrong = form.shown.value.get(`rows.${row.key}`);
  return (
    <tr
      class={row.aside !== null ? "bench-aside" : wrong ? "bench-wrong" : ""}
      data-row={row.key}
      id={anchorOf(`rows.${row.key}`)}
    >
      <th scope="row" class="bench-number">
        {index + 1}
      </th>
      {columns.map((column) => (
        <Cell
          key={column.key}
          form={form}
          row={row}
          column={column}
          name={name}
          last={before?.cells[column.key] ?? ""}
          error={says(column.key)}
        />
      ))}
      {hasPlate(form.spec, form.draft.value.fields) && (
        <OpenCells form={form} row={row} name={name} error={says("open")} />
      )}
      <td class="bench-so-far">
        {wrong ? (
          <span class="field-error" role="alert">
            {wrong}
          </span>
        ) : (
          soFar
        )}
      </td>
      <td class="bench-actions">
        <Actions row={row} form={form} name={name} error={says("setAside")} />
      </td>
    </tr>
  );
}

interface CellProps {
  readonly form: FormModel;
  readonly row: DraftRow;
  readonly column: ColumnSpec;
  readonly name: string;
  readonly last: string;
  readonly error: string | undefined;
}

function Cell({ form, row, column, name, last, error }: CellProps) {
  const id = useId();
  const path = `rows.${row.key}.${column.key}`;
  const text = row.cells[column.key] ?? "";
  const spec = cellNumber(form.spec.kind, column, form.draft.value.units[column.key]);
  if (column.options) {
    return (
      <td data-label={column.label} id={anchorOf(path)}>
        <select
          {...inputOf(id, error)}
          data-cell
          class="bench-cell"
          aria-label={`${name}, ${column.inList ?? column.label.toLowerCase()}`}
          value={text}
          onChange={(event) => typeCell(form, row.key, column.key, event.currentTarget.value)}
          onBlur={() => leave(form, path)}
        >
          <option value="">choose…</option>
          {column.options.map(([value, label]) => (
            <option key={value} value={value}>
              {label}
            </option>
          ))}
        </select>
        <FieldError id={id} error={error} />
      </td>
    );
  }
  if (spec === null) {
    return (
      <td data-label={column.label} id={anchorOf(path)}>
        <input
          type="checkbox"
          data-cell
          aria-label={`${name}, ${column.label.toLowerCase()}`}
          checked={text === "yes"}
          onChange={(event) => typeCell(form, row.key, column.key, event.currentTarget.checked ? "yes" : "")}
        />
      </td>
    );
  }
  const unit = spec.dimension && unitOf(form, column.key, spec.dimension);
  return (
    <td data-label={column.label} id={anchorOf(path)}>
      <NumberInput
        spec={spec}
        digits
        cell
        class="bench-cell"
        name={`${name}, ${column.label.toLowerCase()}`}
        input={inputOf(id, error)}
        placeholder={last === "" ? (column.fallback ?? unit ?? "") : `last ${last}`}
        text={text}
        onText={(typed) => typeCell(form, row.key, column.key, typed)}
        onLeave={() => leaveCell(form, row.key, column.key, spec)}
      />
      <FieldError id={id} error={error} />
    </td>
  );
}

interface OpenCellsProps {
  readonly form: FormModel;
  readonly row: DraftRow;
  readonly name: string;
  readonly error: string | undefined;
}

function OpenCells({ form, row, name, error }: OpenCellsProps) {
  const id = useId();
  const path = `rows.${row.key}.open`;
  const type = (at: number, text: string) =>
    change(
      form,
      withRow(form.draft.value, row.key, (old) => ({
        ...old,
        open: form.draft.value.holes.map((_, i) => (i === at ? text : (old.open[i] ?? ""))),
      })),
      path,
    );
  return form.draft.value.holes.map((hole, i) => (
    <td
      key={hole.key}
      data-label={`Open of ${hole.count || "?"} × ${hole.diameter || "?"}`}
      id={i === 0 ? anchorOf(path) : undefined}
    >
      <NumberInput
        spec={openNumber(null)}
        cell
        class="bench-cell bench-count"
        name={`${name}, open holes of kind ${i + 1}`}
        input={{ ...inputOf(id, error), id: `${id}-${i}` }}
        placeholder="0"
        text={row.open[i] ?? ""}
        onText={(text) => type(i, text)}
        onLeave={() => leave(form, path)}
      />
      {i === 0 && <FieldError id={id} error={error} />}
    </td>
  ));
}

interface ActionsProps {
  readonly form: FormModel;
  readonly row: DraftRow;
  readonly name: string;
  readonly error: string | undefined;
}

/** What is done with a row: set aside with its reason, counted again, removed. */
function Actions({ form, row, name, error }: ActionsProps) {
  const setAside = (aside: string | null) =>
    change(
      form,
      withRow(form.draft.value, row.key, (old) => ({ ...old, aside })),
      `rows.${row.key}.setAside`,
    );
  if (row.aside !== null)
    return <Aside row={row} form={form} name={name} error={error} onChange={setAside} />;
  return (
    <>
      <button type="button" class="plain" onClick={() => setAside("")} aria-label={`Set aside ${name}`}>
        set aside
      </button>
      <button
        type="button"
        class="plain"
        aria-label={`Remove ${name} from the form`}
        onClick={() => change(form, withoutRow(form.draft.value, row.key))}
      >
        remove
      </button>
    </>
  );
}

interface AsideProps extends ActionsProps {
  readonly onChange: (aside: string | null) => void;
}

function Aside({ form, row, name, error, onChange }: AsideProps) {
  const path = `rows.${row.key}.setAside`;
  return (
    <span id={anchorOf(path)} class="bench-reason">
      <input
        type="text"
        aria-label={`Why ${name} is set aside`}
        aria-invalid={error ? "true" : undefined}
        placeholder="why?"
        value={row.aside ?? ""}
        onInput={(event) => onChange(event.currentTarget.value)}
        onBlur={() => leave(form, path)}
      />
      <button type="button" class="plain" onClick={() => onChange(null)} aria-label={`Count again ${name}`}>
        count again
      </button>
      {error && (
        <span class="field-error" role="alert">
          {error}
        </span>
      )}
    </span>
  );
}
