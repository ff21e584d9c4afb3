import type { BenchTest, TestKind } from "../../../../shared/model/tests/index.ts";
import { loadProblem, type RideHeightTest } from "../../../../shared/model/tests/rideHeight.ts";
import {
  contradictionSentence,
  rowContradictions,
} from "../../../../shared/model/tests/rowContradictions.ts";
import { weighedProblem } from "../../../../shared/model/tests/weighIn.ts";
import {
  isGood,
  type NumberSpec,
  needed,
  type Reading,
  readNumber,
} from "../../../../shared/units/readNumber.ts";
import type { Draft, DraftHole, DraftRow } from "./draft.ts";
import { isBlankRow } from "./draft.ts";
import { columnsOf, fieldsOf, hasPlate, isUnderNamed, KINDS, namedPaths } from "./kinds.ts";
import { cellNumber, fieldNumber, HOLE_NUMBERS, type HoleNumber, openNumber } from "./numbers.ts";
import { optionOf } from "./options.ts";
import type { ColumnSpec, FieldSpec, KindSpec } from "./spec.ts";

/** A message by the path of the field it belongs to; rows and holes by their key: "rows.3.pressure". */
export type Messages = ReadonlyMap<string, string>;

type Json = Record<string, unknown>;

export interface ReadDraft {
  /** as the API takes it; rows that can't be read are left out */
  readonly data: Json;
  readonly errors: Messages;
  /** the draft's key of each row in `data` */
  readonly rowKeys: readonly number[];
  /** the place of each in the draft, from 1 */
  readonly rowNumbers: readonly number[];
}

/** What stands in the record for one text. */
interface Read<T = unknown> {
  readonly value: T;
}

const DATE = /^\d{4}-\d{2}-\d{2}$/;

/** @returns the columns whose last value is filled in for the next row */
export function carriedOf(spec: KindSpec): ReadonlySet<string> {
  return new Set(spec.columns.filter((column) => column.carried).map((column) => column.key));
}

/** Reads a draft whole: what it says, and what is wrong with it, field by field. */
export function readDraft(draft: Draft): ReadDraft {
  const spec = KINDS[draft.kind];
  const errors = new Map<string, string>();
  const data: Json = { kind: draft.kind, instruments: {} };
  const named = namedPaths(spec, draft.fields);
  for (const field of fieldsOf(spec)) {
    if (!isUnderNamed(field.key, named) && (spec.applies?.(field.key, draft.fields) ?? true))
      take(data, field.key, readField(draft.kind, field, draft.fields[field.key] ?? ""), errors);
  }
  requireWhole(draft, errors);
  requireWeighed(data, errors);
  if (!hasPlate(spec, draft.fields)) delete data.plate;
  else if (data.plate === undefined) data.plate = { holes: readHoles(draft.holes, errors) };
  const carried = carriedOf(spec);
  const filled = draft.rows.filter((row) => !isBlankRow(row, carried));
  if (filled.length === 0) errors.set("rows", `Give at least one ${spec.row}.`);
  const rows = filled.map((row) => ({ key: row.key, data: readRow(draft, spec, row, errors) }));
  const good = rows.filter((row) => row.data !== null);
  const readings = { kind: draft.kind, rows: good.map((row) => row.data) } as unknown as BenchTest;
  for (const { row, what } of rowContradictions(readings)) {
    const { key } = good[row];
    const place = draft.rows.findIndex((each) => each.key === key);
    errors.set(`rows.${key}`, contradictionSentence({ row: place, what }));
  }
  if (draft.kind === "ride-height" && good.length === filled.length) {
    const problem = loadProblem((readings as RideHeightTest).rows);
    if (problem !== null) errors.set("rows", problem);
  }
  data.rows = good.map((row) => row.data);
  const places = new Map(draft.rows.map(({ key }, i) => [key, i + 1]));
  const rowKeys = good.map((row) => row.key);
  return { data, errors, rowKeys, rowNumbers: rowKeys.map((key) => places.get(key) ?? 0) };
}

/** A weigh-in says what stood on the scale. */
function requireWeighed(data: Json, errors: Map<string, string>): void {
  if (data.kind !== "weigh-in") return;
  const problem = weighedProblem(data as Parameters<typeof weighedProblem>[0]);
  if (problem) errors.set(problem.path, problem.message);
}

/** A thermometer alone doesn't say how dense the air is. */
function requireWhole({ fields }: Draft, errors: Map<string, string>): void {
  const parts = ["air.temperature", "air.pressure", "air.humidity"];
  const given = parts.filter((path) => fields[path]?.trim());
  if (given.length === 0 || given.length === parts.length) return;
  for (const path of parts) {
    if (!given.includes(path)) errors.set(path, "Needed beside the others, or leave all three empty.");
  }
}

function take(data: Json, path: string, reading: Reading<Read> | null, errors: Map<string, string>): void {
  if (reading === null) return;
  if (isGood(reading)) place(data, path.split("."), reading.value);
  else errors.set(path, reading.message);
}

function place(data: Json, [key, ...rest]: readonly string[], value: unknown): void {
  if (rest.length === 0) {
    data[key] = value;
    return;
  }
  const inner = (data[key] ?? {}) as Json;
  data[key] = inner;
  place(inner, rest, value);
}

/** @returns a number as the record keeps it: with its unit as typed, a bare one as it is */
function readStored(spec: NumberSpec, text: string): Reading<Read> {
  const reading = readNumber(spec, text);
  if (!isGood(reading)) return reading;
  return { value: spec.dimension === null ? reading.value : reading.typed };
}

/** @returns what a field says; null where it is left out */
function readField(kind: TestKind, field: FieldSpec, text: string): Reading<Read> | null {
  const blank = text.trim() === "";
  const number = fieldNumber(kind, field);
  if (number) {
    if (!blank) return readStored(number, text);
    return field.type === "quantity" && field.required ? needed(field.label, number) : null;
  }
  switch (field.type) {
    case "part":
      if (!blank) return { value: text };
      if (field.otherwise) return null;
      return field.required ? { message: `Choose a ${field.label.toLowerCase()}.` } : { value: null };
    case "date":
      return DATE.test(text) ? { value: text } : { message: "The day of the test is needed, as 2026-03-14." };
    case "choice":
      return field.options.some(([value]) => value === text)
        ? { value: text }
        : { message: `Choose: ${field.options.map(([, label]) => label).join(", ")}.` };
    case "reason":
      return blank ? null : { value: text.trim() };
    default:
      return { value: field.type === "note" ? text : text.trim() };
  }
}

/** Read in this order; a coefficient of its own may be left out. */
const HOLE_LABELS: readonly (readonly [HoleNumber, string])[] = [
  ["diameter", "Diameter"],
  ["thickness", "Thickness"],
  ["count", "Count"],
  ["dischargeCoefficient", "Coefficient"],
];

function readHoles(holes: readonly DraftHole[], errors: Map<string, string>): Json[] {
  if (holes.length === 0)
    errors.set("plate", "The bleed plate's holes are needed: diameter, thickness, count.");
  return holes.map((hole) => {
    const data: Json = { edge: hole.edge };
    for (const [key, label] of HOLE_LABELS) {
      const blank = hole[key].trim() === "";
      if (blank && key === "dischargeCoefficient") continue;
      const reading = blank ? needed(label, HOLE_NUMBERS[key]) : readStored(HOLE_NUMBERS[key], hole[key]);
      if (isGood(reading)) data[key] = reading.value;
      else errors.set(`plate.holes.${hole.key}.${key}`, reading.message);
    }
    return data;
  });
}

/** @returns the row as the API takes it; null where something in it can't be read */
function readRow(draft: Draft, spec: KindSpec, row: DraftRow, errors: Map<string, string>): Json | null {
  const data: Json = {};
  let good = true;
  const at = (key: string, reading: Reading<Read> | null) => {
    if (reading === null) return;
    if (isGood(reading)) data[key] = reading.value;
    else {
      good = false;
      errors.set(`rows.${row.key}.${key}`, reading.message);
    }
  };
  for (const column of columnsOf(spec, draft.fields))
    at(column.key, readCell(draft.kind, column, row.cells[column.key] ?? "", draft.units[column.key]));
  if (hasPlate(spec, draft.fields)) at("open", readOpen(row, draft.holes));
  if (draft.kind === "friction" && good && data.held === null && data.slid === null)
    at("slid", { message: "Give the tilt that held, the tilt at which it slid, or both." });
  if (row.aside !== null) at("setAside", readReason(row.aside));
  return good ? data : null;
}

function readReason(text: string): Reading<Read> {
  return text.trim() === "" ? { message: "Say why the row is set aside." } : { value: text.trim() };
}

function readOption(
  { label }: ColumnSpec,
  options: NonNullable<ColumnSpec["options"]>,
  text: string,
): Reading<Read> {
  const value = optionOf(options, text);
  if (value !== null) return { value };
  const read = text.trim() === "" ? "" : ` Read "${text.trim()}".`;
  return { message: `${label}: choose ${options.map(([, each]) => each).join(", ")}.${read}` };
}

function readCell(kind: TestKind, column: ColumnSpec, text: string, unit?: string): Reading<Read> | null {
  const number = cellNumber(kind, column, unit);
  if (column.options) return readOption(column, column.options, text);
  if (number === null) return { value: text === "yes" };
  const said = text.trim() === "" ? (column.fallback ?? "") : text;
  if (said !== "") return readStored(number, said);
  if (column.need === "nullable") return { value: null };
  return column.need === "optional" ? null : needed(column.label, number);
}

/** A kind of hole left empty beside others that are counted was closed. */
function readOpen(row: DraftRow, holes: readonly DraftHole[]): Reading<Read<number[]>> {
  if (row.open.every((text) => text.trim() === ""))
    return { message: "How many holes were open? 0 where the plate was shut." };
  const counts: number[] = [];
  for (const [i, hole] of holes.entries()) {
    const made = readNumber(HOLE_NUMBERS.count, hole.count);
    const reading = readNumber(openNumber(isGood(made) ? made.value : null), row.open[i]?.trim() || "0");
    if (!isGood(reading)) return reading;
    counts.push(reading.value);
  }
  return { value: counts };
}
