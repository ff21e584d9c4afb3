import { useMemo, useState } from "preact/hooks";
import type { Book } from "../../../shared/book/resolve.ts";
import { downloadText, plainName } from "../../ui/download.ts";
import { Mark } from "../../ui/Mark.tsx";
import { Problem } from "../../ui/Problem.tsx";
import { ScrollTable } from "../../ui/ScrollTable.tsx";
import { toCsv } from "../../ui/table.ts";
import { useSaid } from "../../ui/useSaid.ts";
import { StateMark } from "../../ui/verdict/StateMark.tsx";
import { FigureOf } from "../../ui/working/FigureOf.tsx";
import { ColumnHead } from "./ColumnHead.tsx";
import { comparedTable, compareSentence } from "./compareWords.ts";
import {
  type Cell,
  differs,
  differsFromFirst,
  type Line,
  lineText,
  type Row,
  type RowGroup,
} from "./rows/row.ts";
import { comparedRows } from "./rows/rows.ts";
import { type Column, ColumnWorker, type Compared } from "./useColumn.ts";

export interface CompareTableProps {
  readonly book: Book;
  /** two to six, the first is the one that the others are held against */
  readonly compared: readonly Compared[];
  /** what else is known of them, by column */
  readonly besides?: readonly RowGroup[];
  /** of the table, as it is read aloud */
  readonly label: string;
  /** takes one out of the table */
  readonly onRemove: (key: string) => void;
}

/** Builds side by side: every figure of their own views, a row each; what differs is marked. */
export function CompareTable({ book, compared, besides = [], label, onRemove }: CompareTableProps) {
  const [known, setKnown] = useState<ReadonlyMap<string, Column>>(new Map());
  const [onlyDiffering, setOnly] = useState(false);
  const columns = compared.flatMap((each) => known.get(each.key) ?? []);
  const groups = useMemo(
    () => [...comparedRows(book, columns), ...besides],
    [book, known, compared, besides],
  );
  const isWhole = columns.length === compared.length;
  const receive = (column: Column) => setKnown((before) => new Map(before).set(column.key, column));
  const busy = !isWhole || columns.some(({ sure, isRunning }) => sure.busy || isRunning);
  useSaid(busy ? null : compareSentence(columns));
  return (
    <div class="compare" aria-busy={busy}>
      {compared.map((each) => (
        <ColumnWorker key={each.key} book={book} compared={each} onColumn={receive} />
      ))}
      {isWhole && (
        <>
          <p class="compare-answer">{compareSentence(columns)}</p>
          {columns.flatMap(({ letter, problems }) =>
            problems.map((problem) => (
              <Problem key={`${letter} ${problem}`} message={`${letter}: ${problem}`} />
            )),
          )}
          <div class="compare-tools">
            <label>
              <input
                type="checkbox"
                checked={onlyDiffering}
                onChange={(event) => setOnly(event.currentTarget.checked)}
              />{" "}
              Only what differs
            </label>
            <span class="quiet small">
              ≠ marks a row that differs, a bar what differs from {columns[0].letter}.
            </span>
            <button type="button" class="plain" onClick={() => save(columns, groups)}>
              CSV
            </button>
          </div>
          <ScrollTable label={label}>
            <Table columns={columns} groups={groups} onlyDiffering={onlyDiffering} onRemove={onRemove} />
          </ScrollTable>
        </>
      )}
    </div>
  );
}

function save(columns: readonly Column[], groups: readonly RowGroup[]): void {
  const name = plainName(`compare ${columns.map(({ name }) => name).join(" ")}`).slice(0, 80);
  downloadText(toCsv(comparedTable(columns, groups)), `${name}.csv`);
}

interface TableProps extends Pick<CompareTableProps, "onRemove"> {
  readonly columns: readonly Column[];
  readonly groups: readonly RowGroup[];
  readonly onlyDiffering: boolean;
}

function Table({ columns, groups, onlyDiffering, onRemove }: TableProps) {
  const shown = groups
    .map(({ title, rows }) => ({ title, rows: onlyDiffering ? rows.filter(differs) : rows }))
    .filter(({ rows }) => rows.length > 0);
  return (
    <table class="compare-table">
      <thead>
        <tr>
          <th scope="col">
            <span class="visually-hidden">Figure</span>
          </th>
          {columns.map((column) => (
            <ColumnHead key={column.key} column={column} onRemove={onRemove} />
          ))}
        </tr>
      </thead>
      {shown.map(({ title, rows }) => (
        <tbody key={title}>
          <tr>
            <th scope="rowgroup" colSpan={columns.length + 1} class="compare-group">
              <span>{title}</span>
            </th>
          </tr>
          {rows.map((each) => (
            <TableRow key={each.key} row={each} columns={columns} />
          ))}
        </tbody>
      ))}
    </table>
  );
}

function TableRow({ row, columns }: { readonly row: Row; readonly columns: readonly Column[] }) {
  const isDiffering = differs(row);
  return (
    <tr class={isDiffering ? "compare-differs" : undefined}>
      <th scope="row">
        {isDiffering && (
          <span class="compare-sign">
            <span aria-hidden="true">≠</span>
            <span class="visually-hidden">differs: </span>
          </span>
        )}
        {row.title}
      </th>
      {row.cells.map((cell, i) => (
        <td key={columns[i].key} class={differsFromFirst(row, i) ? "compare-other" : undefined}>
          {cell ? <Figure cell={cell} /> : "…"}
        </td>
      ))}
    </tr>
  );
}

function Pieces({ line }: { readonly line: Line }) {
  if (typeof line === "string") return <>{line}</>;
  return (
    <>
      {line.map((piece) =>
        typeof piece === "string" ? (
          piece
        ) : (
          <FigureOf key={piece.text} {...piece.working}>
            {piece.text}
          </FigureOf>
        ),
      )}
    </>
  );
}

function Figure({ cell }: { readonly cell: Cell }) {
  const { text, also = [], tone, state, marks = [], working } = cell;
  return (
    <>
      {state ? (
        <StateMark state={state} words={text} />
      ) : (
        <span class={`compare-figure ${tone ?? ""}`}>
          {working ? <FigureOf {...working}>{text}</FigureOf> : text}
        </span>
      )}
      {marks.map(({ word, what: title }) => (
        <span key={word}>
          {" "}
          <Mark word={word} title={title} />
        </span>
      ))}
      {also.map((line) => (
        <small key={lineText(line)}>
          <Pieces line={line} />
        </small>
      ))}
    </>
  );
}
