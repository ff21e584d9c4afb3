import { readCell } from "./csv.ts";

/** Only lines of which one column says this are read. */
export interface Condition {
  /** place of the column in the file */
  readonly column: number;
  /** as typed: "21818", "a", "10 to 20", "> 10.4", "not empty" */
  readonly text: string;
}

type Test = (cell: string) => boolean;

const COMPARED = /^(<=|>=|≤|≥|<|>)\s*(.+)$/;
const RANGE = /^(.+?)\s*(?:\bto\b|\.\.|…|–)\s*(.+)$/;

const comparisons: Readonly<Record<string, (a: number, b: number) => boolean>> = {
  "<": (a, b) => a < b,
  ">": (a, b) => a > b,
  "<=": (a, b) => a <= b,
  ">=": (a, b) => a >= b,
  "≤": (a, b) => a <= b,
  "≥": (a, b) => a >= b,
};

function onNumber(decimal: "." | ",", holds: (value: number) => boolean): Test {
  return (cell) => {
    const value = readCell(cell, decimal);
    return value !== null && holds(value);
  };
}

/**
 * What a condition asks of a cell.
 *
 * @param text - a value, a range, a comparison, or "not empty"
 * @param decimal - the file's decimal sign; what is typed has a point or that one
 * @returns null where nothing is asked
 */
export function conditionTest(text: string, decimal: "." | ","): Test | null {
  const asked = text.trim();
  if (asked === "") return null;
  if (/^not empty$/i.test(asked)) return (cell) => cell.trim() !== "";
  const typed = (part: string) => readCell(part, ".") ?? readCell(part, decimal);
  const [, sign, limit] = COMPARED.exec(asked) ?? [];
  const bound = limit === undefined ? null : typed(limit);
  if (bound !== null) return onNumber(decimal, (value) => comparisons[sign](value, bound));
  const [, low, high] = RANGE.exec(asked) ?? [];
  const [from, to] = [low, high].map((part) => (part === undefined ? null : typed(part)));
  if (from !== null && to !== null) return onNumber(decimal, (value) => value >= from && value <= to);
  const exact = typed(asked);
  const said = asked.toLowerCase();
  return (cell) =>
    cell.trim().toLowerCase() === said || (exact !== null && readCell(cell, decimal) === exact);
}

/** @returns whether a line is asked for by all conditions */
export function selector(
  conditions: readonly Condition[],
  decimal: "." | ",",
): (cells: readonly string[]) => boolean {
  const tests = conditions.flatMap(({ column, text }) => {
    const test = conditionTest(text, decimal);
    return test ? [{ column, test }] : [];
  });
  return (cells) => tests.every(({ column, test }) => test(cells[column] ?? ""));
}
