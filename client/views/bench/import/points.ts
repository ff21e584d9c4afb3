import type { TestKind } from "../../../../shared/model/tests/index.ts";
import { isGood, readNumber } from "../../../../shared/units/readNumber.ts";
import { inWords } from "../../../ui/count.ts";
import type { DraftRow } from "../record/draft.ts";
import { columnsOf, KINDS } from "../record/kinds.ts";
import { COMMON_SPEED, quantityText } from "../record/numbers.ts";
import { readRoleCell } from "./cells.ts";
import type { CsvLine, CsvTable } from "./csv.ts";
import type { ColumnMapping } from "./mapping.ts";
import { flowOf } from "./missing.ts";
import { IGNORE, OPEN, type Role, roleLabel, SET_ASIDE, TEST } from "./roles.ts";

export interface PointsRequest {
  readonly table: CsvTable;
  readonly mapping: readonly ColumnMapping[];
  /** for every row of a curve, where no column has the speed; as typed */
  readonly commonSpeed: string;
  /** "curve" unless given */
  readonly kind?: TestKind;
  /** how the flow is known; a bleed plate where it has holes, unless given */
  readonly flowFrom?: string;
  /** kinds of hole in the plate; 0 where the flow is known */
  readonly holeKinds: number;
}

/** A line of the file that became a row. */
export interface GoodLine {
  readonly line: number;
  readonly row: DraftRow;
  /** rad/s, to tell the speeds of a curve apart; null in other tests */
  readonly speed: number | null;
  /** the test it belongs to, where a column tells; empty where none does */
  readonly test: string;
}

/** A line that is skipped, and why. */
export interface BadLine {
  readonly line: number;
  readonly cells: readonly string[];
  readonly reason: string;
}

export interface Points {
  readonly good: readonly GoodLine[];
  readonly bad: readonly BadLine[];
}

/** What is the same for every line. */
interface Reader extends PointsRequest {
  readonly kind: TestKind;
  /** roles that a row has, given how the flow was taken */
  readonly taken: ReadonlySet<Role>;
  /** of these, the ones that no row may leave empty */
  readonly required: ReadonlySet<Role>;
}

/** How much was drawn is counted in one way in every row: by charge, where any row has it. */
function countedBy({ table, mapping }: PointsRequest): Role {
  const at = mapping.findIndex(({ role }) => role === "charge");
  return at >= 0 && table.lines.some(({ cells }) => cells[at]?.trim()) ? "charge" : "time";
}

function readerOf(request: PointsRequest): Reader {
  const kind = request.kind ?? "curve";
  const flow = flowOf(request);
  const columns = columnsOf(KINDS[kind], flow);
  const plate = KINDS[kind].plate && flow.flowFrom === "bleed-plate" ? [OPEN] : [];
  const required = columns.filter(({ need }) => need === "required").map(({ key }) => key);
  const drawn = kind === "discharge" ? [countedBy(request)] : [];
  return {
    ...request,
    kind,
    taken: new Set([...columns.map(({ key }) => key), ...plate, SET_ASIDE, TEST]),
    required: new Set([...required, ...plate, ...drawn]),
  };
}

/** Texts by role, and the open holes in the file's order; or why the line can't be read. */
function readCells(
  cells: readonly string[],
  { kind, mapping, table, taken, required }: Reader,
): { readonly texts: Record<string, string>; readonly open: string[] } | string {
  const texts: Record<string, string> = {};
  const open: string[] = [];
  for (const [i, column] of mapping.entries()) {
    if (column.role === IGNORE || !taken.has(column.role)) continue;
    const cell = cells[i].trim();
    if (cell === "" && required.has(column.role)) return `${roleLabel(kind, column.role)} is empty`;
    if (cell === "") continue;
    const reading = readRoleCell(kind, cell, column, table.decimal);
    if (!isGood(reading)) return reading.message;
    if (column.role === OPEN) open.push(reading.value);
    else texts[column.role] = reading.value;
  }
  return { texts, open };
}

function readLine({ line, cells }: CsvLine, key: number, reader: Reader): GoodLine | BadLine {
  const { table, kind, commonSpeed } = reader;
  const bad = (reason: string): BadLine => ({ line, cells, reason });
  const columns = table.header.length;
  if (cells.length !== columns) return bad(`${cells.length} cells, the header has ${columns}`);
  const said = readCells(cells, reader);
  if (typeof said === "string") return bad(said);
  const { setAside, test = "", ...readings } = said.texts;
  const row = (all: Readonly<Record<string, string>>): DraftRow => ({
    key,
    cells: all,
    open: said.open,
    aside: setAside ?? null,
  });
  if (kind === "friction" && !readings.held && !readings.slid) return bad("neither held nor slid is given");
  if (kind !== "curve") return { line, row: row(readings), speed: null, test };
  const speed = readNumber(COMMON_SPEED, readings.speed ?? commonSpeed);
  if (!isGood(speed)) return bad(`speed: ${speed.message}`);
  const all = { ...readings, speed: readings.speed ?? quantityText(speed.typed) };
  return { line, row: row(all), speed: speed.value, test };
}

/** Turns the file's lines into rows; a line that can't be read is skipped with its reason, none is guessed. */
export function readPoints(request: PointsRequest): Points {
  const reader = readerOf(request);
  const lines = request.table.lines.map((line, key) => readLine(line, key, reader));
  return {
    good: lines.filter((line): line is GoodLine => "row" in line),
    bad: lines.filter((line): line is BadLine => "reason" in line),
  };
}

/** @returns how many lines become rows and how many are skipped, in words */
export function countInWords({ good, bad }: Points): string {
  const lines = (count: number) => `${inWords(count)} ${count === 1 ? "line" : "lines"}`;
  const first = `${lines(good.length)} can be read`;
  const text =
    bad.length === 0
      ? `${first}, none is skipped.`
      : `${first}, ${lines(bad.length)} ${bad.length === 1 ? "is" : "are"} skipped.`;
  return text[0].toUpperCase() + text.slice(1);
}
