import { useState } from "preact/hooks";
import { ScrollTable } from "../../../ui/ScrollTable.tsx";
import { columnsOf, KINDS } from "../record/kinds.ts";
import { countInWords, thinnedInWords } from "./countWords.ts";
import type { CsvTable } from "./csv.ts";
import type { CsvLine } from "./lines.ts";
import type { ImportModel } from "./model.ts";
import { Part } from "./Part.tsx";
import type { GoodLine } from "./points.ts";
import { type Role, roleInList, TEST } from "./roles.ts";
import { silenceOf } from "./silence.ts";

const SHOWN_AT_ONCE = 12;
const MOST_SHOWN = 500;

interface PreviewProps {
  readonly model: ImportModel;
  readonly table: CsvTable;
}

/** @returns the roles that the preview has a column for: those that a row of the test has and the file gives */
function shownRoles({ kind, mapping, form }: ImportModel): Role[] {
  const given = new Set(mapping.value.map(({ role }) => role));
  if (kind === "curve") given.add("speed");
  const own = columnsOf(KINDS[kind], form.draft.value.fields).map(({ key }) => key);
  return [...own, TEST].filter((role) => given.has(role));
}

/** The lines as they will be read; one that is skipped says why. */
export function Preview({ model, table }: PreviewProps) {
  const missing = model.missing.value;
  return (
    <section>
      <h2>Preview</h2>
      {missing.length > 0 ? (
        <ul>
          {missing.map((wish) => (
            <li key={wish}>{wish}</li>
          ))}
        </ul>
      ) : (
        <Lines model={model} table={table} />
      )}
    </section>
  );
}

/** Lines that were skipped, or refused when they were sent. */
function badLines({ points, refused }: ImportModel, table: CsvTable): CsvLine[] {
  const { bad } = points.value;
  const known = new Set(bad.map(({ line }) => line));
  const later: CsvLine[] = [];
  if (refused.value.size > 0)
    for (const line of table.lines)
      if (refused.value.has(line.line) && !known.has(line.line)) later.push(line);
  return [...bad, ...later].sort((a, b) => a.line - b.line);
}

/** Lines that are kept or skipped; those that were thinned out or that nobody asked for are not shown. */
function chosenLines({ points }: ImportModel): CsvLine[] {
  const { good, bad } = points.value;
  const kept = good.map(({ line }) => ({ line, cells: [] }));
  return [...kept, ...bad].sort((a, b) => a.line - b.line);
}

/** @returns the lines to show, at most so many, and how many there are of their kind */
function linesOf({ model, table }: PreviewProps, onlyBad: boolean, most: number) {
  const { read, good, passedOver, skipped } = model.points.value;
  if (onlyBad) return { shown: badLines(model, table).slice(0, most), count: skipped };
  if (read === good.length && passedOver === 0)
    return { shown: table.lines.first(most), count: table.lines.length };
  const chosen = chosenLines(model);
  return { shown: chosen.slice(0, most), count: chosen.length };
}

/** Why lines are skipped or were refused, by their number. */
function reasonsIn({ points, refused }: ImportModel): Map<number, string> {
  const reasons = new Map(points.value.bad.map(({ line, reason }) => [line, `skipped: ${reason}`]));
  for (const [line, reason] of refused.value) reasons.set(line, `refused: ${reason}`);
  return reasons;
}

function Lines({ model, table }: PreviewProps) {
  const [onlyBad, setOnlyBad] = useState(false);
  const [all, setAll] = useState(false);
  const points = model.points.value;
  const reasons = reasonsIn(model);
  const { shown, count } = linesOf({ model, table }, onlyBad, all ? MOST_SHOWN : SHOWN_AT_ONCE);
  const dense = [...points.thinning.values()].find(({ every }) => every > 1);
  const silence = silenceOf(model.kind, model.mapping.value);
  return (
    <>
      <Part what="Reading the lines" part={model.linesRead.value} />
      <p>
        {countInWords(points)}{" "}
        {reasons.size > 0 && (
          <button type="button" class="plain" onClick={() => setOnlyBad(!onlyBad)}>
            {onlyBad ? "show every line" : "show only the skipped ones"}
          </button>
        )}
      </p>
      {dense && <p class="quiet">Thinned out: {thinnedInWords(dense)}; its note will say so.</p>}
      {silence && <p class="quiet">{silence}</p>}
      <LineTable model={model} delimiter={table.delimiter} lines={shown} reasons={reasons} />
      {shown.length < count && !all && (
        <button type="button" onClick={() => setAll(true)}>
          Show {count <= MOST_SHOWN ? `all ${count}` : `the first ${MOST_SHOWN} of ${count}`} lines
        </button>
      )}
    </>
  );
}

interface LineTableProps {
  readonly model: ImportModel;
  readonly delimiter: string;
  readonly lines: readonly CsvLine[];
  readonly reasons: ReadonlyMap<number, string>;
}

function LineTable({ model, delimiter, lines, reasons }: LineTableProps) {
  const good = new Map(model.points.value.good.map((line) => [line.line, line]));
  const roles = shownRoles(model);
  return (
    <ScrollTable label="Lines as they are read">
      <table class="bench-preview">
        <thead>
          <tr>
            <th scope="col">Line</th>
            {roles.map((role) => (
              <th key={role} scope="col">
                {roleInList(model.kind, role)}
              </th>
            ))}
            <th scope="col">Reads as</th>
          </tr>
        </thead>
        <tbody>
          {lines.map((line) => (
            <Line
              key={line.line}
              line={line}
              good={good.get(line.line)}
              reason={reasons.get(line.line)}
              roles={roles}
              delimiter={delimiter}
              row={KINDS[model.kind].row}
            />
          ))}
        </tbody>
      </table>
    </ScrollTable>
  );
}

interface LineProps {
  readonly line: CsvLine;
  readonly good: GoodLine | undefined;
  /** why it is skipped or was refused */
  readonly reason: string | undefined;
  readonly roles: readonly Role[];
  readonly delimiter: string;
  /** what a row of the test is */
  readonly row: string;
}

function readsAs({ good, row }: LineProps): string {
  const aside = good?.row.aside;
  return aside ? `set aside: ${aside}` : `a ${row}`;
}

function Line(props: LineProps) {
  const { line, good, reason, roles, delimiter } = props;
  const textOf = (role: Role) => (role === TEST ? good?.test : good?.row.cells[role]) ?? "";
  return (
    <tr class={reason === undefined ? "" : "bench-bad"}>
      <th scope="row">{line.line}</th>
      {reason === undefined ? (
        <>
          {roles.map((role) => (
            <td key={role}>{textOf(role)}</td>
          ))}
          <td>{readsAs(props)}</td>
        </>
      ) : (
        <td colSpan={roles.length + 1}>
          <div class="bench-bad-why">
            {reason} <span class="quiet">({line.cells.join(` ${delimiter} `)})</span>
          </div>
        </td>
      )}
    </tr>
  );
}
