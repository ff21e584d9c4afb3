import { toSI } from "../../../../shared/units/parse.ts";
import { inWords } from "../../../ui/count.ts";
import type { DraftRow } from "../record/draft.ts";
import { isGood, type Reading, readQuantity } from "../record/texts.ts";
import { type CsvLine, type CsvTable, readCell } from "./csv.ts";
import { type ColumnMapping, type ImportKind, ROLE_LABELS, type Role, roleDimension } from "./mapping.ts";

export interface PointsRequest {
  readonly table: CsvTable;
  readonly mapping: readonly ColumnMapping[];
  /** for every row, where no column has the speed; as typed */
  readonly commonSpeed: string;
  /** "curve" unless given */
  readonly kind?: ImportKind;
  /** kinds of hole in the plate; 0 where the flow is known */
  readonly holeKinds: number;
}

/** A line of the file that became a point. */
export interface GoodLine {
  readonly line: number;
  readonly row: DraftRow;
  /** rad/s, to tell the speeds apart */
  readonly speed: number;
}

/** A line that is kept out, and why. */
export interface BadLine {
  readonly line: number;
  readonly cells: readonly string[];
  readonly reason: string;
}

export interface Points {
  readonly good: readonly GoodLine[];
  readonly bad: readonly BadLine[];
}

/** @returns what a mapping lacks before any line can be read; empty where nothing is missing */
export function missingRoles(request: PointsRequest): string[] {
  const { mapping, kind } = request;
  const missing = kind === "thrust" ? missingOfThrust(mapping) : missingOfCurve(request);
  const twice = mapping.find(
    ({ role }, i) =>
      role !== "ignore" && role !== "open" && mapping.findIndex((other) => other.role === role) < i,
  );
  if (twice) missing.push(`Two columns are ${ROLE_LABELS[twice.role]}; leave one of them out.`);
  return missing;
}

function missingOfThrust(mapping: readonly ColumnMapping[]): string[] {
  return (["speed", "thrust"] as const)
    .filter((role) => !mapping.some((column) => column.role === role))
    .map((role) => `Choose the column with the ${role}.`);
}

function missingOfCurve({ mapping, commonSpeed, holeKinds }: PointsRequest): string[] {
  const has = (role: Role) => mapping.some((column) => column.role === role);
  const missing: string[] = [];
  if (!has("pressure")) missing.push("Choose the column with the pressure.");
  if (holeKinds === 0 && !has("flow")) missing.push("Choose the column with the flow.");
  if (holeKinds > 0 && mapping.filter((column) => column.role === "open").length !== holeKinds)
    missing.push(`Choose ${holeKinds} columns with open holes, one for each kind of hole.`);
  if (!has("speed") && commonSpeed.trim() === "")
    missing.push("Choose the column with the speed, or give one speed for all points.");
  return missing;
}

const REQUIRED: ReadonlySet<Role> = new Set(["speed", "pressure", "flow", "open", "thrust"]);

function readQuantityCell(cell: string, column: ColumnMapping, decimal: "." | ","): Reading<string> {
  const name = roleDimension(column.role);
  if (name === null) return { value: cell };
  const label = ROLE_LABELS[column.role];
  const number = readCell(cell, decimal);
  if (number === null && !/\d\s*[^\d\s.,]/.test(cell))
    return { message: `${label} "${cell.trim()}" is no number` };
  const text = number === null ? cell.trim() : `${number} ${column.unit}`;
  const reading = readQuantity(text, name);
  if (!isGood(reading)) return { message: `${label} "${cell.trim()}" can't be read` };
  const si = toSI(reading.value, name);
  if (column.role === "speed" && !(si > 0)) return { message: `${label} must be more than 0, read ${text}` };
  if (column.role === "flow" && !(si >= 0)) return { message: `${label} must not be below 0, read ${text}` };
  return { value: text };
}

function readLine({ line, cells }: CsvLine, key: number, request: PointsRequest): GoodLine | BadLine {
  const { table, mapping, commonSpeed } = request;
  const bad = (reason: string): BadLine => ({ line, cells, reason });
  const columns = table.header.length;
  if (cells.length !== columns) return bad(`${cells.length} cells, the header has ${columns}`);
  const texts: Record<string, string> = {};
  const open: string[] = [];
  for (const [i, column] of mapping.entries()) {
    if (column.role === "ignore") continue;
    const cell = cells[i].trim();
    if (cell === "" && !REQUIRED.has(column.role)) continue;
    if (cell === "") return bad(`${ROLE_LABELS[column.role]} is empty`);
    const reading = readQuantityCell(cell, column, table.decimal);
    if (!isGood(reading)) return bad(reading.message);
    if (column.role === "open") open.push(reading.value);
    else texts[column.role] = reading.value;
  }
  const { setAside, ...readings } = texts;
  const speed = readQuantity(readings.speed ?? commonSpeed, "speed");
  if (!isGood(speed)) return bad(`speed: ${speed.message}`);
  const all = { ...readings, speed: readings.speed ?? `${speed.value.value} ${speed.value.unit}` };
  const row: DraftRow = { key, cells: all, open, aside: setAside ?? null };
  return { line, row, speed: toSI(speed.value, "speed") };
}

/** Turns the file's lines into points; a line that can't be read is kept out with its reason, none is guessed. */
export function readPoints(request: PointsRequest): Points {
  const lines = request.table.lines.map((line, key) => readLine(line, key, request));
  return {
    good: lines.filter((line): line is GoodLine => "row" in line),
    bad: lines.filter((line): line is BadLine => "reason" in line),
  };
}

/** @returns how many lines become points and how many are kept out, in words */
export function countInWords({ good, bad }: Points): string {
  const lines = (count: number) => `${inWords(count)} ${count === 1 ? "line" : "lines"}`;
  const first = `${lines(good.length)} can be read`;
  const text =
    bad.length === 0
      ? `${first}, none is kept out.`
      : `${first}, ${lines(bad.length)} ${bad.length === 1 ? "is" : "are"} kept out.`;
  return text[0].toUpperCase() + text.slice(1);
}
