import { shownUnit } from "../../../shared/units/dimensions.ts";
import { inUnit } from "../../../shared/units/format.ts";
import { parseNumber } from "../../../shared/units/number.ts";
import { type TypedQuantity, toSI } from "../../../shared/units/parse.ts";
import { getAt, setAt } from "./paths.ts";
import type { FieldSpec, FormSpec, ListSpec, NumberSpec, QuantitySpec, SingleSpec } from "./spec.ts";

/** What stands in the fields, by path; a list's rows carry their place in the path: "sizes.0.diameter". */
export type Draft = Readonly<Record<string, string | TypedQuantity | null>>;
export type Rows = Readonly<Record<string, number>>;

export interface FormState {
  readonly values: Draft;
  /** how many rows each list has */
  readonly rows: Rows;
}

/** So much of what was read stands in a message [characters]. */
const QUOTED = 60;
/** Digits in which a stored SI value comes back as it was typed. */
const DIGITS = 12;

export const uncertaintyPath = (key: string): string => `uncertainty.${key}`;

/** Between the paths of a list of marks, in its field. */
const MARK_SEPARATOR = ",";

/** @returns the paths in a field of marks */
export function marksIn(value: string | TypedQuantity | null | undefined): string[] {
  return typeof value === "string" ? value.split(MARK_SEPARATOR).filter(Boolean) : [];
}

/** @returns the field with one path marked or no longer */
export function toggledMark(value: string | TypedQuantity | null | undefined, path: string): string {
  const marks = marksIn(value);
  const next = marks.includes(path) ? marks.filter((each) => each !== path) : [...marks, path];
  return next.join(MARK_SEPARATOR);
}

/** @returns numbers of a form that can be marked as estimated, lists left out */
export function markable(form: FormSpec): (QuantitySpec | NumberSpec)[] {
  return fieldsOf(form).filter((spec) => spec.kind === "quantity" || spec.kind === "number");
}

/** @returns every field of a form */
export function fieldsOf(form: FormSpec): FieldSpec[] {
  return form.sections.flatMap((section) => section.fields);
}

function typed(si: number, spec: QuantitySpec): TypedQuantity {
  const unit = shownUnit(spec.dimension, spec.unit);
  return { value: Number(inUnit(si, spec.dimension, unit.label).toPrecision(DIGITS)), unit: unit.label };
}

function shown(value: unknown, spec: SingleSpec): string | TypedQuantity | null {
  if (spec.kind === "quantity") return typeof value === "number" ? typed(value, spec) : null;
  if (value === undefined || value === null)
    return spec.kind === "choice" ? (spec.options[0]?.[0] ?? "") : "";
  return String(value);
}

/** Uncertainty keys hold dots of their own ("vehicle.mass"), so they are looked up whole. */
function uncertaintyOf(data: unknown, key: string): unknown {
  const doubts = getAt(data, "uncertainty");
  return typeof doubts === "object" && doubts !== null ? (doubts as Record<string, unknown>)[key] : undefined;
}

function uncertaintyShown(data: unknown, spec: QuantitySpec | NumberSpec): string | TypedQuantity | null {
  return shown(uncertaintyOf(data, spec.doubt ?? ""), spec);
}

/** @returns fields filled from a record, or empty ones */
export function draftOf(form: FormSpec, data: unknown): FormState {
  const values: Record<string, string | TypedQuantity | null> = {};
  const rows: Record<string, number> = {};
  for (const spec of fieldsOf(form)) {
    if (spec.kind === "list") {
      const list = getAt(data, spec.path);
      rows[spec.path] = Array.isArray(list) ? list.length : spec.required ? 1 : 0;
      for (let i = 0; i < rows[spec.path]; i++)
        for (const column of spec.columns) {
          const path = `${spec.path}.${i}.${column.path}`;
          values[path] = shown(getAt(data, path), column);
        }
    } else if (spec.kind === "marks") {
      const marks = getAt(data, spec.path);
      values[spec.path] = Array.isArray(marks) ? marks.join(MARK_SEPARATOR) : "";
    } else {
      values[spec.path] = shown(getAt(data, spec.path), spec);
      if ("doubt" in spec && spec.doubt) values[uncertaintyPath(spec.doubt)] = uncertaintyShown(data, spec);
    }
  }
  return { values, rows };
}

/** Takes row `at` out of a list and moves the later ones up. */
export function withoutRow({ values, rows }: FormState, spec: ListSpec, at: number): FormState {
  const count = rows[spec.path] ?? 0;
  const next: Record<string, string | TypedQuantity | null> = { ...values };
  for (let i = at; i < count; i++)
    for (const column of spec.columns) {
      const from = `${spec.path}.${i + 1}.${column.path}`;
      const to = `${spec.path}.${i}.${column.path}`;
      if (i + 1 < count) next[to] = values[from] ?? null;
      else delete next[to];
    }
  return { values: next, rows: { ...rows, [spec.path]: count - 1 } };
}

export interface Refused {
  readonly path: string;
  readonly message: string;
}

export interface Reading {
  readonly data: Record<string, unknown>;
  /** what keeps it from being sent, by field */
  readonly refused: readonly Refused[];
}

type Value = string | TypedQuantity | null | undefined;

/** @returns the stored form of one field's value, or why it has none */
function read(value: Value, spec: SingleSpec, label = spec.label): { value?: unknown } | { message: string } {
  const empty = value === null || value === undefined || (typeof value === "string" && value.trim() === "");
  if (empty) return spec.required ? { message: `${label} is needed.` } : {};
  if (typeof value !== "string")
    return spec.kind === "quantity"
      ? { value: toSI(value, spec.dimension) }
      : { message: `${label} is no text.` };
  if (spec.kind !== "number") return { value: value.trim() };
  const number = parseNumber(value);
  return number === null
    ? { message: `Read “${value.trim().slice(0, QUOTED)}”, which is no number; for example 2 or 0.65.` }
    : { value: number };
}

function readList(state: FormState, spec: ListSpec, refused: Refused[]): unknown[] | undefined {
  const count = state.rows[spec.path] ?? 0;
  if (count === 0) return undefined;
  return Array.from({ length: count }, (_, i) => {
    const cells = spec.columns.map((column) => {
      const path = `${spec.path}.${i}.${column.path}`;
      const result = read(state.values[path], column);
      if ("message" in result) refused.push({ path, message: result.message });
      return [column.path, "value" in result ? result.value : undefined] as const;
    });
    if (spec.tuple) return cells.map(([, value]) => value);
    return Object.fromEntries(cells.filter(([, value]) => value !== undefined));
  });
}

/**
 * Turns the fields into a record, SI.
 *
 * @param form - which fields there are
 * @param state - what stands in them
 * @param before - the record as it was: what has no field here stays as it is
 */
export function readForm(form: FormSpec, state: FormState, before: Record<string, unknown> = {}): Reading {
  const refused: Refused[] = [];
  let data = before;
  const doubts = { ...((before.uncertainty as Record<string, number> | undefined) ?? {}) };
  for (const spec of fieldsOf(form)) {
    if (spec.kind === "list") {
      data = setAt(data, spec.path, readList(state, spec, refused));
      continue;
    }
    if (spec.kind === "marks") {
      const marks = marksIn(state.values[spec.path]);
      data = setAt(data, spec.path, marks.length > 0 ? marks : undefined);
      continue;
    }
    const result = read(state.values[spec.path], spec);
    if ("message" in result) refused.push({ path: spec.path, message: result.message });
    else data = setAt(data, spec.path, result.value);
    if (!("doubt" in spec) || !spec.doubt) continue;
    const spread = read(
      state.values[uncertaintyPath(spec.doubt)],
      { ...spec, required: false },
      `± of ${spec.label}`,
    );
    if ("message" in spread) refused.push({ path: uncertaintyPath(spec.doubt), message: spread.message });
    else if (typeof spread.value === "number") doubts[spec.doubt] = spread.value;
    else delete doubts[spec.doubt];
  }
  const none = Object.keys(doubts).length === 0 && before.uncertainty === undefined;
  return { data: none ? data : { ...data, uncertainty: doubts }, refused };
}
