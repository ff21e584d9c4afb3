import { useLayoutEffect, useRef, useState } from "preact/hooks";
import { anchorOf } from "../../../ui/anchor.ts";
import { keepFocus } from "../../../ui/keepFocus.ts";
import { Status } from "../../../ui/Status.tsx";
import { isBlankRow } from "../record/draft.ts";
import { columnsOf } from "../record/kinds.ts";
import { carriedOf } from "../record/readDraft.ts";
import type { ColumnSpec } from "../record/spec.ts";
import type { Running } from "../running/result.ts";
import { focusCell, useCellKeys } from "./cellKeys.ts";
import { addRow, type FormModel } from "./model.ts";
import { RowHeads } from "./RowHeads.tsx";
import { RowLine } from "./RowLine.tsx";
import { usePaste } from "./usePaste.ts";

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

/** The rows on the screen: more on demand, a new one ready to be typed in, keys that go from cell to cell. */
function useShownRows(form: FormModel) {
  const [shown, setShown] = useState(SHOWN_AT_ONCE);
  const body = useRef<HTMLTableSectionElement>(null);
  const added = useRef<number | null>(null);
  const { rows } = form.draft.value;
  useLayoutEffect(() => {
    if (added.current === null) return;
    focusCell(body.current, { row: rows.length - 1, column: added.current });
    added.current = null;
  });
  const showMore = () => setShown(shown + SHOWN_AT_ONCE);
  const add = (column = 0) => {
    added.current = column;
    addRow(form);
    setShown(Math.max(shown, rows.length + 1));
  };
  const keys = useCellKeys(Math.min(shown, rows.length), (column) => {
    const last = rows[rows.length - 1];
    if (shown < rows.length) return showMore();
    if (!isBlankRow(last, carriedOf(form.spec))) return add(column);
    return body.current?.closest("form")?.querySelector<HTMLElement>("[type=submit]")?.focus();
  });
  return { rows: rows.slice(0, shown), body, keys, add, showMore };
}

/** The readings, a row each: a table on a wide screen, a card each on a phone. */
export function RowTable({ form, running }: RowTableProps) {
  const { columns, more, ask } = useColumns(form);
  const { rows, body, keys, add, showMore } = useShownRows(form);
  const { paste, pasted, undo } = usePaste(form, columns);
  const draft = form.draft.value;
  const error = form.shown.value.get("rows");
  return (
    <div class="bench-rows-block">
      <table class="bench-rows">
        <RowHeads form={form} columns={columns} />
        <tbody ref={body} onPaste={paste} {...keys}>
          {rows.map((row, index) => (
            <RowLine
              key={row.key}
              form={form}
              row={row}
              index={index}
              before={draft.rows[index - 1] ?? null}
              columns={columns}
              soFar={running.byRow.get(row.key) ?? ""}
            />
          ))}
        </tbody>
      </table>
      {draft.rows.length > rows.length && (
        <button type="button" onClick={showMore}>
          Show more of the {draft.rows.length} rows
        </button>
      )}
      <AddBar row={form.spec.row} more={more} onAdd={() => add()} onAsk={ask} />
      {pasted && (
        <Status class="bench-pasted">
          {pasted}{" "}
          <button type="button" class="plain" onClick={undo}>
            Undo the paste
          </button>
        </Status>
      )}
      {error && (
        <p class="field-error" role="alert">
          {error}
        </p>
      )}
    </div>
  );
}

interface AddBarProps {
  /** what a row of the test is */
  readonly row: string;
  /** columns that are not on the screen */
  readonly more: readonly ColumnSpec[];
  readonly onAdd: () => void;
  readonly onAsk: (key: string) => void;
}

/** The ways to one more row, or one more column. */
function AddBar({ row, more, onAdd, onAsk }: AddBarProps) {
  return (
    <div id={anchorOf("rows")} class="bench-add">
      <button type="button" onMouseDown={keepFocus} onClick={onAdd}>
        Add {row}
      </button>
      {more.length > 0 && (
        <span class="bench-more">
          Also read:{" "}
          {more.map((column) => (
            <button key={column.key} type="button" class="plain" onClick={() => onAsk(column.key)}>
              {column.label.toLowerCase()}
            </button>
          ))}
        </span>
      )}
    </div>
  );
}
