import { marginText } from "../../../shared/decide/verdict/figures.ts";
import { STANDARD_GRAVITY } from "../../../shared/physics/constants.ts";
import type { DimensionName } from "../../../shared/units/dimensions.ts";
import { formatFixed, inUnit } from "../../../shared/units/format.ts";
import type { Column } from "./answers.ts";

/** A column of the sets as the screen shows it. */
export interface ColumnSpec {
  readonly key: Column;
  /** as a heading */
  readonly label: string;
  /** as an axis says it, unit included */
  readonly axis: string;
  readonly unit: string;
  readonly decimals: number;
  /** which of two is better */
  readonly want: "most" | "least";
  readonly shown: (si: number) => number;
}

const GRAMS = 1000;

const bare = (si: number) => si;
const as = (name: DimensionName, unit?: string) => (si: number) => inUnit(si, name, unit);

/** A heading that names its unit already. */
const MINUTES = "minutes";

const column = (
  key: Column,
  label: string,
  unit: string,
  decimals: number,
  want: ColumnSpec["want"],
  shown: (si: number) => number,
): ColumnSpec => ({
  key,
  label,
  axis:
    unit === "" || label.toLowerCase() === MINUTES
      ? label.toLowerCase()
      : `${label.charAt(0).toLowerCase()}${label.slice(1)}, ${unit}`,
  unit,
  decimals,
  want,
  shown,
});

/** In the order in which menus offer them. */
export const COLUMNS: readonly ColumnSpec[] = [
  column("margin", "Margin", "×", 2, "most", bare),
  column("mass", "Mass", "g", 0, "least", as("mass", "g")),
  column("time", "Minutes", "min", 1, "most", as("time", "min")),
  column("windingTemperature", "Winding", "°C", 0, "least", as("temperature", "°C")),
  column("price", "Price", "", 2, "least", bare),
  column("height", "Total height", "mm", 1, "least", as("length", "mm")),
  column("rotorFactor", "Burst over speed", "×", 2, "most", bare),
  column("driving", "Margin driving", "×", 2, "most", bare),
  column("parked", "Margin parked", "×", 2, "most", bare),
  column("suction", "Pull", "g", 0, "most", (si) => (si / STANDARD_GRAVITY) * GRAMS),
  column("pressure", "Suction", "Pa", 0, "least", bare),
  column("flow", "Flow", "L/s", 2, "least", as("flow", "L/s")),
  column("speed", "Speed", "rpm", 0, "least", as("speed", "rpm")),
  column("packCurrent", "Pack current", "A", 2, "least", bare),
];

const MARGINS: readonly Column[] = ["margin", "driving", "parked"];

/** @returns unit of a column as its heading adds it: ", mm"; nothing where heading or cell have it */
export function headUnit(key: Column): string {
  const { axis, unit } = columnSpec(key);
  return unit === "" || unit === "×" || axis === MINUTES ? "" : `, ${unit}`;
}

/** @returns the column with that key; the first where there is none */
export function columnSpec(key: string | null): ColumnSpec {
  return COLUMNS.find((each) => each.key === key) ?? COLUMNS[0];
}

export const isMargin = (key: Column): boolean => MARGINS.includes(key);

/** @returns a value as shown, with its unit; "–" where it isn't known */
export function valueText(key: Column, si: number | null): string {
  if (isMargin(key)) return marginText(si);
  if (si === null) return "–";
  const { shown, decimals, unit } = columnSpec(key);
  return `${formatFixed(shown(si), decimals)}${unit && `\u202f${unit}`}`;
}

/** @returns the value without its unit, for a cell under a heading that names it */
export function cellText(key: Column, si: number | null): string {
  if (si === null) return isMargin(key) ? "none needed" : "–";
  if (isMargin(key)) return marginText(si);
  const { shown, decimals } = columnSpec(key);
  return formatFixed(shown(si), decimals);
}
