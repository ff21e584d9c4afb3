import { asRead, type Spelling } from "../../../shared/units/decimalMark.ts";
import type { TypedQuantity } from "../../../shared/units/quantity.ts";
import { isGood, needed, type Reading, readNumber } from "../../../shared/units/readNumber.ts";
import { readRectangle, rectangleText, type TypedRectangle } from "../../../shared/units/rectangle.ts";
import { asTyped, type NumericSpec, numberAt, typedNumber, uncertaintyPath } from "./numbers.ts";
import { getAt, setAt } from "./paths.ts";
import type { BareSpec, FieldSpec, FormSpec, ListSpec, QuantitySpec, SingleSpec } from "./spec.ts";

/** What stands in the fields, as typed, by path; a list's rows carry their place in the path: "sizes.0.diameter". */
export type Draft = Readonly<Record<string, string>>;
export type Rows = Readonly<Record<string, number>>;

export interface FormState {
  readonly values: Draft;
  /** how many rows each list has */
  readonly rows: Rows;
}

/** Between the paths of a list of marks, in its field. */
const MARK_SEPARATOR = ",";

/** @returns the paths in a field of marks */
export function marksIn(text: string | undefined): string[] {
  return (text ?? "").split(MARK_SEPARATOR).filter(Boolean);
}

/** @returns the field with one path marked or no longer */
export function toggledMark(text: string | undefined, path: string): string {
  const marks = marksIn(text);
  const next = marks.includes(path) ? marks.filter((each) => each !== path) : [...marks, path];
  return next.join(MARK_SEPARATOR);
}

const isStored = (spec: FieldSpec): spec is QuantitySpec | BareSpec =>
  spec.kind === "quantity" || spec.kind === "number";

/** @returns whether a field takes a number */
export const isNumeric = (spec: FieldSpec): spec is NumericSpec => isStored(spec) || spec.kind === "measured";

/** @returns numbers of a form that can be marked as estimated, lists left out */
export function markable(form: FormSpec): (QuantitySpec | BareSpec)[] {
  return fieldsOf(form).filter(isStored);
}

/** @returns every field of a form */
export function fieldsOf(form: FormSpec): FieldSpec[] {
  return form.sections.flatMap((section) => section.fields);
}

function shown(value: unknown, spec: SingleSpec, spell: Spelling): string {
  if (value === undefined || value === null)
    return spec.kind === "choice" ? (spec.options[0]?.[0] ?? "") : "";
  if (spec.kind === "measured") return asTyped(value as TypedQuantity, spell);
  if (spec.kind === "rectangle") return rectangleText(value as TypedRectangle);
  return isStored(spec) && typeof value === "number" ? typedNumber(value, spec, spell) : String(value);
}

/** Uncertainty keys hold dots of their own ("vehicle.mass"), so they are looked up whole. */
function uncertaintyOf(data: unknown, key: string): unknown {
  const stated = getAt(data, "uncertainty");
  return typeof stated === "object" && stated !== null ? (stated as Record<string, unknown>)[key] : undefined;
}

/**
 * Fields filled from a record, or empty ones.
 *
 * @param spell - with the reader's decimal mark unless given
 */
export function draftOf(form: FormSpec, data: unknown, spell: Spelling = asRead): FormState {
  const values: Record<string, string> = {};
  const rows: Record<string, number> = {};
  for (const spec of fieldsOf(form)) {
    if (spec.kind === "list") {
      const list = getAt(data, spec.path);
      rows[spec.path] = Array.isArray(list) ? list.length : spec.required ? 1 : 0;
      for (let i = 0; i < rows[spec.path]; i++)
        for (const column of spec.columns) {
          const path = `${spec.path}.${i}.${column.path}`;
          values[path] = shown(getAt(data, path), column, spell);
        }
    } else if (spec.kind === "marks") {
      const marks = getAt(data, spec.path);
      values[spec.path] = Array.isArray(marks) ? marks.join(MARK_SEPARATOR) : "";
    } else {
      values[spec.path] = shown(getAt(data, spec.path), spec, spell);
      if (isStored(spec) && spec.doubt)
        values[uncertaintyPath(spec.doubt)] = shown(uncertaintyOf(data, spec.doubt), spec, spell);
    }
  }
  return { values, rows };
}

/** Takes row `at` out of a list and moves the later ones up. */
export function withoutRow({ values, rows }: FormState, spec: ListSpec, at: number): FormState {
  const count = rows[spec.path] ?? 0;
  const next: Record<string, string> = { ...values };
  for (let i = at; i < count; i++)
    for (const column of spec.columns) {
      const from = `${spec.path}.${i + 1}.${column.path}`;
      const to = `${spec.path}.${i}.${column.path}`;
      if (i + 1 < count) next[to] = values[from] ?? "";
      else delete next[to];
    }
  return { values: next, rows: { ...rows, [spec.path]: count - 1 } };
}

export interface Refused {
  readonly path: string;
  readonly message: string;
}

export interface ReadForm {
  readonly data: Record<string, unknown>;
  /** what keeps it from being sent, by field */
  readonly refused: readonly Refused[];
}

/** What of one field is stored; nothing where it is left empty. */
interface Stored {
  readonly value?: unknown;
}

/** A form while it is read: what it says goes together, what is wrong with it as well. */
class Reader {
  readonly refused: Refused[] = [];

  constructor(
    private readonly form: FormSpec,
    private readonly state: FormState,
  ) {}

  /** @returns the stored form of one field's value; undefined where it is empty or has none */
  read(path: string, spec: SingleSpec, label = spec.label): unknown {
    const reading = this.readingOf(path, spec, label);
    if (isGood(reading)) return reading.value;
    this.refused.push({ path, message: reading.message });
    return undefined;
  }

  private readingOf(path: string, spec: SingleSpec, label: string): Reading<Stored> {
    const text = this.state.values[path] ?? "";
    const number = isNumeric(spec)
      ? numberAt(this.form, spec, path, (other) => this.state.values[other])
      : null;
    if (text.trim() === "") {
      if (!spec.required) return {};
      return number ? needed(label, number) : { message: `${label} is needed.` };
    }
    if (spec.kind === "rectangle") {
      const typed = readRectangle(text);
      return isGood(typed) ? { value: typed } : typed;
    }
    if (!number) return { value: text.trim() };
    const reading = readNumber(number, text);
    return isGood(reading) && spec.kind === "measured" ? { value: reading.typed } : reading;
  }

  /** @returns the rows of a list; undefined where it has none */
  list(spec: ListSpec): unknown[] | undefined {
    const count = this.state.rows[spec.path] ?? 0;
    if (count === 0) return undefined;
    return Array.from({ length: count }, (_, i) => {
      const cells = spec.columns.map(
        (column) => [column.path, this.read(`${spec.path}.${i}.${column.path}`, column)] as const,
      );
      if (spec.tuple) return cells.map(([, value]) => value);
      return Object.fromEntries(cells.filter(([, value]) => value !== undefined));
    });
  }
}

/** The uncertainties that have fields here, among those that the record has besides. */
function readUncertainties(form: FormSpec, reader: Reader, before: Record<string, unknown>) {
  const stated = { ...((before.uncertainty as Record<string, unknown> | undefined) ?? {}) };
  for (const spec of markable(form)) {
    if (!spec.doubt) continue;
    const value = reader.read(uncertaintyPath(spec.doubt), { ...spec, required: false });
    if (value === undefined) delete stated[spec.doubt];
    else stated[spec.doubt] = value;
  }
  return stated;
}

/**
 * Turns the fields into a record, SI.
 *
 * @param form - which fields there are
 * @param state - what stands in them
 * @param before - the record as it was: what has no field here stays as it is
 */
export function readForm(form: FormSpec, state: FormState, before: Record<string, unknown> = {}): ReadForm {
  const reader = new Reader(form, state);
  let data = before;
  for (const spec of fieldsOf(form)) {
    if (spec.kind === "list") data = setAt(data, spec.path, reader.list(spec));
    else if (spec.kind === "marks") {
      const marks = marksIn(state.values[spec.path]);
      data = setAt(data, spec.path, marks.length > 0 ? marks : undefined);
    } else data = setAt(data, spec.path, reader.read(spec.path, spec));
  }
  const uncertainty = readUncertainties(form, reader, before);
  const none = Object.keys(uncertainty).length === 0 && before.uncertainty === undefined;
  return { data: none ? data : { ...data, uncertainty }, refused: reader.refused };
}
