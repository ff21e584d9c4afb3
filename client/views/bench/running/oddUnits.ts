import { asRead } from "../../../../shared/units/decimalMark.ts";
import type { DimensionName } from "../../../../shared/units/dimensions.ts";
import { type TypedQuantity, toSI } from "../../../../shared/units/parse.ts";
import type { ColumnSpec } from "../record/spec.ts";

/** Readings of one column in two units, this many times apart: a slip of the unit rather than a reading [-]. Judgement; grams for newtons are 102 times. */
const SLIP = 30;

type Row = Readonly<Record<string, unknown>>;

interface Cell {
  readonly key: number;
  readonly typed: TypedQuantity;
  readonly size: number;
}

/** A reading whose unit looks like a slip, in words. */
export interface OddUnit {
  readonly key: number;
  readonly message: string;
}

const isTyped = (value: unknown): value is TypedQuantity =>
  typeof value === "object" && value !== null && "unit" in value && "value" in value;

const spelled = ({ value, unit }: TypedQuantity): string => `${asRead(String(value))}\u202f${unit}`;

function cellsOf(rows: readonly Row[], keys: readonly number[], key: string, name: DimensionName): Cell[] {
  return rows.flatMap((row, i) => {
    const typed = row[key];
    if (!isTyped(typed) || row.setAside !== undefined) return [];
    const size = Math.abs(toSI(typed, name));
    return size > 0 ? [{ key: keys[i], typed, size }] : [];
  });
}

function middle(cells: readonly Cell[]): Cell {
  const sorted = [...cells].sort((a, b) => a.size - b.size);
  return sorted[Math.floor(sorted.length / 2)];
}

/** A cell against those above it in other units: the unit that a column went over to is the one uncertain. */
function slipOf(cell: Cell, above: readonly Cell[], label: string): OddUnit[] {
  const others = above.filter(({ typed }) => typed.unit !== cell.typed.unit);
  if (others.length === 0) return [];
  const beside = middle(others);
  const ratio = cell.size / beside.size;
  if (ratio < SLIP && ratio > 1 / SLIP) return [];
  const message = `${label}: ${spelled(cell.typed)} beside ${spelled(beside.typed)}. Is the unit right?`;
  return [{ key: cell.key, message }];
}

/**
 * Readings whose unit looks like a slip: another unit than those above in the column, and far from them.
 *
 * @param rows - as the record has them, quantities as typed
 * @param keys - the form's key of each row
 * @param columns - readings of a row
 */
export function oddUnits(
  rows: readonly Row[],
  keys: readonly number[],
  columns: readonly ColumnSpec[],
): OddUnit[] {
  return columns.flatMap(({ key, label, dimension }) => {
    if (dimension === null) return [];
    const cells = cellsOf(rows, keys, key, dimension);
    return cells.flatMap((cell, i) => slipOf(cell, cells.slice(0, i), label));
  });
}
