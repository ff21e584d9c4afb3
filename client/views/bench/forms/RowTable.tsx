import { useLayoutEffect, useRef, useState } from "preact/hooks";
import { dimension } from "../../../../shared/units/dimensions.ts";
import { anchorOf } from "../../../ui/anchor.ts";
import { keepFocus } from "../../../ui/keepFocus.ts";
import { columnsOf, hasPlate } from "../record/kinds.ts";
import { unitLabels } from "../record/numbers.ts";
import type { ColumnSpec } from "../record/spec.ts";
import type { Running } from "../running/result.ts";
import { addRow, chooseUnit, type FormModel, unitOf } from "./model.ts";
import { RowLine } from "./RowLine.tsx";

/** Rows drawn at first; a test of thousands of rows is opened piece by piece. */
const SHOWN_AT_ONCE = 100;

interface RowTableProps {
  readonly form: FormModel;
  readonly running: Running;
}

/** @returns the columns on the screen: what is needed, what was used, what was asked for */
function useColumns(form: FormModel) {
  const [asked, setAsked] = useState<ReadonlySet<string>>(new Set());
  const draft = form.draft.value;
  const all = columnsOf(form.spec, draft.fields);
  const isUsed = ({ key }: ColumnSpec) =>
    draft.units[key] !== undefined || draft.rows.some((row) => row.cells[key]?.trim());
  const isShown = (column: ColumnSpec) =>
    column.need !== "optional" || column.offered === true || asked.has(column.key) || isUsed(column);
  const columns = all.filter(isShown);
  const more = all.filter((column) => !isShown(column));
  return { columns, more, ask: (key: string) => setAsked(new Set([...asked, key])) };
}

function focusFirstCell(body: HTMLElement | null, key: number): void {
  body?.querySelector<HTMLInputElement>(`[data-row="${key}"] input`)?.focus();
}

/** The readings, a row each: a table on a wide screen, a card each on a phone. */
export function RowTable({ form, running }: RowTableProps) {
  const { columns, more, ask } = useColumns(form);
  const [shown, setShown] = useState(SHOWN_AT_ONCE);
  const body = useRef<HTMLTableSectionElement>(null);
  const added = useRef<number | null>(null);
  const draft = form.draft.value;
  useLayoutEffect(() => {
    if (added.current === null) return;
    focusFirstCell(body.current, added.current);
    added.current = null;
  });
  const add = () => {
    added.current = addRow(form);
    setShown(Math.max(shown, draft.rows.length + 1));
  };
  const rows = draft.rows.slice(0, shown);
  const error = form.shown.value.get("rows");
  return (
    <div class="bench-rows-block">
      <table class="bench-rows">
        <thead>
          <tr>
            <th scope="col" class="bench-number">
              <span class="visually-hidden">Number</span>
            </th>
            {columns.map((column) => (
              <ColumnHead key={column.key} form={form} column={column} />
            ))}
            {hasPlate(form.spec, draft.fields) && <OpenHeads form={form} />}
            <th scope="col" class="bench-so-far">
              So far
            </th>
            <th scope="col" class="bench-actions">
              <span class="visually-hidden">What to do with the row</span>
            </th>
          </tr>
        </thead>
        <tbody ref={body}>
          {rows.map((row, index) => (
            <RowLine
              key={row.key}
              form={form}
              row={row}
              index={index}
              before={draft.rows[index - 1] ?? null}
              columns={columns}
              soFar={running.byRow.get(row.key) ?? ""}
              onEnd={index === draft.rows.length - 1 ? add : null}
            />
          ))}
        </tbody>
      </table>
      {draft.rows.length > shown && (
        <button type="button" onClick={() => setShown(shown + SHOWN_AT_ONCE)}>
          Show more of the {draft.rows.length} rows
        </button>
      )}
      <div id={anchorOf("rows")} class="bench-add">
        <button type="button" onMouseDown={keepFocus} onClick={add}>
          Add {form.spec.row}
        </button>
        {more.length > 0 && (
          <span class="bench-more">
            Also read:{" "}
            {more.map((column) => (
              <button key={column.key} type="button" class="plain" onClick={() => ask(column.key)}>
                {column.label.toLowerCase()}
              </button>
            ))}
          </span>
        )}
      </div>
      {error && (
        <p class="field-error" role="alert">
          {error}
        </p>
      )}
    </div>
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
