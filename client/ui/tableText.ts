import { decimalsByUncertainty, decimalsFor, formatFixed } from "../../shared/units/format.ts";
import { type Cell, shownValue, type Table } from "./table.ts";

/** Significant digits of a number whose uncertainty is not known. */
const DIGITS = 4;
/** Spaces as wide as a digit and as a decimal point, so that points stand above one another. */
const [FIGURE_SPACE, POINT_SPACE] = ["\u2007", "\u2008"];

function decimalsOf(cell: Cell): number {
  if (cell === null || typeof cell === "string") return 0;
  if (typeof cell === "number") return Number.isInteger(cell) ? 0 : decimalsOfPlain(cell);
  return cell.uncertainty > 0 ? decimalsByUncertainty(cell.uncertainty) : decimalsOfPlain(cell.value);
}

/** Of the rounded number: 0.99999 is 1.000. */
const decimalsOfPlain = (value: number): number => decimalsFor(Number(value.toPrecision(DIGITS)), DIGITS);

/** What stands in the place of the decimals that a number does not have. */
function padding(decimals: number, most: number): string {
  if (decimals >= most) return "";
  return (decimals === 0 ? POINT_SPACE : "") + FIGURE_SPACE.repeat(most - decimals);
}

/** @returns a table's cells as text: numbers with the digits that they are known to, their points above one another when set to the right */
export function shownRows({ columns, rows }: Table): string[][] {
  const most = columns.map((_, k) => rows.reduce((high, row) => Math.max(high, decimalsOf(row[k])), 0));
  return rows.map((row) =>
    row.map((cell, k) => {
      if (cell === null) return "–";
      if (typeof cell === "string") return cell;
      const decimals = decimalsOf(cell);
      return (
        formatFixed(typeof cell === "number" ? cell : shownValue(cell), decimals) + padding(decimals, most[k])
      );
    }),
  );
}
