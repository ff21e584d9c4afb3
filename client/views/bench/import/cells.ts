import type { TestKind } from "../../../../shared/model/tests/index.ts";
import type { DimensionName } from "../../../../shared/units/dimensions.ts";
import type { Limits } from "../../../../shared/units/limits.ts";
import { isGood, type NumberSpec, readNumber } from "../../../../shared/units/readNumber.ts";
import { type Conversion, conversionOf } from "../../../../shared/units/readUnit.ts";
import { cellNumber } from "../record/numbers.ts";
import { optionOf } from "../record/options.ts";
import { type Adjustment, adjustmentOf, FIRST } from "./adjust.ts";
import { type ClockTime, elapsed, readClock } from "./clock.ts";
import { readCell } from "./csv.ts";
import type { ColumnMapping } from "./mapping.ts";
import { columnOf, OPEN, roleLabel } from "./roles.ts";

const YES = /^(yes|y|true|1|x|ja)$/i;
const NO = /^(no|n|false|0|-|nein)$/i;

/** What a cell says, as text; a quantity's SI value as well. */
export interface Said {
  readonly value: string;
  readonly si?: number;
}

/** Why a line is skipped, by what is wrong. */
export type Trouble = "sign" | "number" | "unit" | "empty" | "cells" | "other";

/** Why a cell can't be read. */
export interface Unread {
  readonly trouble: Trouble;
  /** what cells that fail alike have in common: "current must not be below 0" */
  readonly common: string;
  /** with what this one says */
  readonly message: string;
}

export const isSaid = (read: Said | Unread): read is Said => "value" in read;

/** Reads a cell that isn't empty; `test` is the one that its line belongs to. */
export type CellReader = (cell: string, test: string) => Said | Unread;

const unread = (trouble: Trouble, common: string, message: string): Unread => ({ trouble, common, message });

/** @returns what a check says, "yes" or nothing; null where a text is neither */
export function yesOrNo(text: string): "yes" | "" | null {
  if (YES.test(text)) return "yes";
  return NO.test(text) ? "" : null;
}

/** @returns why a number can't be what the column holds, in words; null where it can. A number that is too large is the form's to refuse. */
function wrongSign(si: number, { positive, min }: Limits): string | null {
  if (positive) return si > 0 ? null : "must be more than 0";
  return min === 0 && si < 0 ? "must not be below 0" : null;
}

/** A bare number that isn't one under the file's decimal sign is refused, not guessed. */
function carriesUnit(cell: string, name: DimensionName): boolean {
  return /\d\s*[^\d\s.,]/.test(cell) || (name === "fraction" && /\d\s1$/.test(cell));
}

const checkReader =
  (label: string): CellReader =>
  (cell) => {
    const value = yesOrNo(cell);
    if (value !== null) return { value };
    return unread("other", `${label} is neither yes nor no`, `${label} "${cell}" is neither yes nor no`);
  };

const countReader =
  (label: string, decimal: "." | ","): CellReader =>
  (cell) => {
    const count = readCell(cell, decimal);
    if (count !== null && Number.isInteger(count) && count >= 0) return { value: String(count) };
    return unread("number", `${label} is no count`, `${label} "${cell}" is no count`);
  };

function optionReader(label: string, options: readonly (readonly [string, string])[]): CellReader {
  const allowed = options.map(([, each]) => each).join(", ");
  return (cell) => {
    const value = optionOf(options, cell);
    if (value !== null) return { value };
    const none = `is none of ${allowed}`;
    return unread("other", `${label} ${none}`, `${label} "${cell}" ${none}`);
  };
}

/** Digits of a reading that was changed. */
const DIGITS = 12;
const settled = (value: number): number => Number(value.toPrecision(DIGITS));

/** Reads the quantities of one column. */
class QuantityReader {
  private readonly firsts = new Map<string, number | ClockTime>();

  constructor(
    private readonly label: string,
    private readonly spec: NumberSpec & { readonly dimension: DimensionName },
    private readonly decimal: "." | ",",
    private readonly unit: string,
    private readonly conversion: Conversion,
    private readonly adjustment: Adjustment,
  ) {}

  readonly read: CellReader = (cell, test) => {
    const clock = this.spec.dimension === "time" && cell.includes(":") ? readClock(cell) : null;
    if (clock) return this.checked(settled(this.lapse(clock, test) * this.adjustment.times), "s");
    const number = readCell(cell, this.decimal);
    if (number !== null) return this.checked(this.adjusted(number, test), this.unit);
    if (!carriesUnit(cell, this.spec.dimension))
      return unread("number", `${this.label} is no number`, `${this.label} "${cell}" is no number`);
    const reading = readNumber({ ...this.spec, limits: undefined }, cell);
    if (!isGood(reading))
      return unread("unit", `${this.label} can't be read`, `${this.label} "${cell}" can't be read`);
    if (this.isPlain()) return this.judged(cell, reading.value);
    const { factor, offset } = this.conversion;
    return this.checked(this.adjusted((reading.value - offset) / factor, test), this.unit);
  };

  private isPlain(): boolean {
    return this.adjustment.times === 1 && this.adjustment.minus === 0;
  }

  private adjusted(number: number, test: string): number {
    if (this.isPlain()) return number;
    const { times, minus } = this.adjustment;
    const first = minus === FIRST ? this.firstOf(test, number) : minus;
    return settled((number - (typeof first === "number" ? first : first.seconds)) * times);
  }

  private lapse(clock: ClockTime, test: string): number {
    const { minus } = this.adjustment;
    const from = minus === FIRST ? this.firstOf(test, clock) : minus;
    return typeof from === "number" ? clock.seconds - from : elapsed(from, clock);
  }

  private firstOf<T extends number | ClockTime>(test: string, now: T): number | ClockTime {
    const first = this.firsts.get(test);
    if (first !== undefined) return first;
    this.firsts.set(test, now);
    return now;
  }

  private checked(value: number, unit: string): Said | Unread {
    const { factor, offset } = unit === this.unit ? this.conversion : { factor: 1, offset: 0 };
    return this.judged(`${value} ${unit}`, value * factor + offset);
  }

  private judged(text: string, si: number): Said | Unread {
    const wrong = wrongSign(si, this.spec.limits ?? {});
    if (wrong === null) return { value: text, si };
    return unread("sign", `${this.label} ${wrong}`, `${this.label} ${wrong}, read ${text}`);
  }
}

/** @returns what reads a column's cells: a number in the column's unit, one with its own, a time, yes or no, or words; adjusted as the column says */
export function cellReader(kind: TestKind, mapping: ColumnMapping, decimal: "." | ","): CellReader {
  const column = columnOf(kind, mapping.role);
  const label = roleLabel(kind, mapping.role);
  if (mapping.role === OPEN) return countReader(label, decimal);
  if (column === null) return (cell) => ({ value: cell });
  if (column.options) return optionReader(label, column.options);
  const spec = cellNumber(kind, column, mapping.unit);
  if (spec === null || column.dimension === null) return checkReader(label);
  const conversion = conversionOf(column.dimension, mapping.unit);
  const adjustment = adjustmentOf(mapping);
  // what can't be read was asked for before a line is read
  if (!conversion || "problem" in adjustment)
    return () => unread("unit", `${label} has no unit`, `${label} has no unit`);
  const quantity = { ...spec, dimension: column.dimension };
  return new QuantityReader(label, quantity, decimal, mapping.unit, conversion, adjustment).read;
}
