import type { TestKind } from "../../../../shared/model/tests/index.ts";
import { withinLimits } from "../../../../shared/units/limits.ts";
import { isGood, readNumber } from "../../../../shared/units/readNumber.ts";
import type { DraftRow } from "../record/draft.ts";
import { columnsOf, KINDS } from "../record/kinds.ts";
import { COMMON_SPEED, quantityText } from "../record/numbers.ts";
import { type Cause, Causes } from "./causes.ts";
import { type CellReader, cellReader, isSaid, type Trouble, type Unread } from "./cells.ts";
import type { CsvTable } from "./csv.ts";
import type { CsvLine } from "./lines.ts";
import type { ColumnMapping } from "./mapping.ts";
import { flowOf } from "./missing.ts";
import { IGNORE, OPEN, type Role, roleLabel, SET_ASIDE, TEST } from "./roles.ts";
import { type Condition, selector } from "./select.ts";
import { Thinned } from "./thinning.ts";

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
  /** only lines that these ask for; all unless given */
  readonly only?: readonly Condition[];
  /** place of the column that splits the file into several tests; null: none does */
  readonly splitBy?: number | null;
  /** only every n-th line is kept; 1 unless given, more where a test could not hold what is left */
  readonly every?: number;
  /** so many rows are kept of each test at most; all unless given */
  readonly most?: number;
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

/** How dense a test's lines were, and how many are kept. */
export interface Thinning {
  /** lines that can be read */
  readonly of: number;
  /** every n-th of them is kept */
  readonly every: number;
  readonly kept: number;
}

export interface Points {
  /** lines that are kept, in the file's order */
  readonly good: readonly GoodLine[];
  /** lines that are skipped: the first of them */
  readonly bad: readonly BadLine[];
  /** lines that can be read, the thinned-out ones among them */
  readonly read: number;
  readonly skipped: number;
  /** lines that no condition asks for */
  readonly passedOver: number;
  /** what skipped lines have in common, the most frequent first */
  readonly causes: readonly Cause[];
  /** by test */
  readonly thinning: ReadonlyMap<string, Thinning>;
}

export const NO_POINTS: Points = {
  good: [],
  bad: [],
  read: 0,
  skipped: 0,
  passedOver: 0,
  causes: [],
  thinning: new Map(),
};

/** So many skipped lines are kept to be shown. */
const BAD_SHOWN = 500;
/** So many lines are read between two looks at the clock. */
const AT_ONCE = 500;

interface Column {
  readonly at: number;
  readonly role: Role;
  readonly required: boolean;
  readonly read: CellReader;
}

/** How much was drawn is counted in one way in every row: by charge, where any row has it. */
function countedBy({ table, mapping }: PointsRequest): Role {
  const at = mapping.findIndex(({ role }) => role === "charge");
  if (at < 0) return "time";
  for (const { cells } of table.lines) if (cells[at]?.trim()) return "charge";
  return "time";
}

function columnsRead(request: PointsRequest, kind: TestKind): Column[] {
  const flow = flowOf(request);
  const own = columnsOf(KINDS[kind], flow);
  const plate = KINDS[kind].plate && flow.flowFrom === "bleed-plate" ? [OPEN] : [];
  const taken = new Set([...own.map(({ key }) => key), ...plate, SET_ASIDE, TEST]);
  const drawn = kind === "discharge" ? [countedBy(request)] : [];
  const needed = own.filter(({ need }) => need === "required").map(({ key }) => key);
  const required = new Set([...needed, ...plate, ...drawn]);
  return request.mapping.flatMap((mapping, at) => {
    const { role } = mapping;
    if (role === IGNORE || !taken.has(role)) return [];
    const read = cellReader(kind, mapping, request.table.decimal);
    return [{ at, role, required: required.has(role), read }];
  });
}

interface Read {
  readonly texts: Record<string, string>;
  readonly open: string[];
  /** SI, of the speed's column */
  readonly speed: number | undefined;
  readonly test: string;
}

type Unreadable = Unread & { readonly column: number | null };

const unreadable = (trouble: Trouble, message: string, column: number | null = null): Unreadable => ({
  trouble,
  common: message,
  message,
  column,
});

/** Reads the lines of a file one by one. */
class LineByLine {
  private readonly kind: TestKind;
  private readonly columns: readonly Column[];
  private readonly titleAt: number;
  private readonly width: number;
  private readonly common: { readonly text: string; readonly si: number } | null;

  constructor(private readonly request: PointsRequest) {
    this.kind = request.kind ?? "curve";
    this.columns = columnsRead(request, this.kind);
    this.titleAt = request.mapping.findIndex(({ role }) => role === TEST);
    this.width = request.table.header.length;
    const speed = readNumber(COMMON_SPEED, request.commonSpeed);
    this.common = isGood(speed) ? { text: quantityText(speed.typed), si: speed.value } : null;
  }

  read({ cells }: CsvLine): Read | Unreadable {
    if (!this.fits(cells)) return unreadable("cells", `${cells.length} cells, the header has ${this.width}`);
    const test = this.testOf(cells);
    if (typeof test !== "string") return test;
    const texts: Record<string, string> = {};
    const open: string[] = [];
    let speed: number | undefined;
    for (const { at, role, required, read } of this.columns) {
      const cell = cells[at].trim();
      if (cell === "") {
        if (!required) continue;
        return unreadable("empty", `${roleLabel(this.kind, role)} is empty`, at);
      }
      const said = read(cell, test);
      if (!isSaid(said)) return { ...said, column: at };
      if (role === "speed") speed = said.si;
      if (role === OPEN) open.push(said.value);
      else texts[role] = said.value;
    }
    return this.whole({ texts, open, speed, test });
  }

  /** A line may end with delimiters that the header hasn't. */
  private fits(cells: readonly string[]): boolean {
    return (
      cells.length === this.width ||
      (cells.length > this.width && cells.slice(this.width).every((cell) => cell.trim() === ""))
    );
  }

  private testOf(cells: readonly string[]): string | Unreadable {
    const { splitBy = null, table } = this.request;
    const title = this.titleAt < 0 ? "" : cells[this.titleAt].trim();
    if (splitBy === null) return title;
    const value = cells[splitBy].trim();
    const name = table.header[splitBy];
    if (value === "") return unreadable("empty", `${name} is empty, and the file is split by it`, splitBy);
    return [title, `${name} ${value}`].filter(Boolean).join(", ");
  }

  /** What a row needs beside its cells. */
  private whole(read: Read): Read | Unreadable {
    const { texts } = read;
    if (this.kind === "friction" && !texts.held && !texts.slid)
      return unreadable("empty", "neither held nor slid is given");
    if (this.kind !== "curve") return read;
    if (texts.speed === undefined) {
      if (!this.common) return unreadable("empty", "speed is not given");
      return { ...read, texts: { ...texts, speed: this.common.text }, speed: this.common.si };
    }
    if (withinLimits(read.speed ?? Number.NaN, COMMON_SPEED.limits ?? {}) !== null) return read;
    const refused = readNumber(COMMON_SPEED, texts.speed);
    return unreadable("other", `speed: ${isGood(refused) ? "out of range" : refused.message}`);
  }
}

function lineOf({ texts, open, speed, test }: Read, line: number, key: number, isCurve: boolean): GoodLine {
  const { setAside, test: _title, ...cells } = texts;
  const row: DraftRow = { key, cells, open, aside: setAside ?? null };
  return { line, row, speed: isCurve ? (speed ?? null) : null, test };
}

/**
 * Turns the file's lines into rows, a few hundred at a time; a line that can't be read is skipped with its reason, none is
 * guessed. Yields which part of the lines is read.
 */
export function* pointsOf(request: PointsRequest): Generator<number, Points> {
  const { table, only = [], every = 1, kind = "curve" } = request;
  const most = request.most ?? Number.POSITIVE_INFINITY;
  const reader = new LineByLine(request);
  const isAskedFor = selector(only, table.decimal);
  const causes = new Causes();
  const tests = new Map<string, Thinned<GoodLine>>();
  const bad: BadLine[] = [];
  let [read, skipped, passedOver] = [0, 0, 0];
  for (let i = 0; i < table.lines.length; i++) {
    if (i % AT_ONCE === 0 && i > 0) yield i / table.lines.length;
    const line = table.lines.at(i);
    if (!isAskedFor(line.cells)) {
      passedOver++;
      continue;
    }
    const said = reader.read(line);
    if ("trouble" in said) {
      skipped++;
      causes.count(said, line, said.column);
      if (bad.length < BAD_SHOWN) bad.push({ ...line, reason: said.message });
      continue;
    }
    read++;
    const thinned = tests.get(said.test) ?? new Thinned(most, every);
    tests.set(said.test, thinned);
    thinned.add(() => lineOf(said, line.line, i, kind === "curve"));
  }
  const done = [...tests].map(([test, thinned]) => [test, thinned.done()] as const);
  return {
    good: done.flatMap(([, { kept }]) => kept).sort((a, b) => a.line - b.line),
    bad,
    read,
    skipped,
    passedOver,
    causes: causes.done(),
    thinning: new Map(done.map(([test, { kept, of, every }]) => [test, { of, every, kept: kept.length }])),
  };
}
