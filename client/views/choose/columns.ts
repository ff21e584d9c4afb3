import { marginText } from "../../../shared/decide/verdict/figures.ts";
import type { ChooseRequest } from "../../../shared/model/api/choose.ts";
import type { DimensionName } from "../../../shared/units/dimensions.ts";
import { formatFixed, inUnit } from "../../../shared/units/format.ts";
import { decimalsOf, unitOf } from "../../../shared/units/showing.ts";
import type { Column } from "./answers.ts";

/** A column of the combinations as the screen shows it. */
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

/** What it is of; a mere number has a sign of its own or none. */
type Of = DimensionName | "×" | "";

const isQuantity = (of: Of): of is DimensionName => of !== "×" && of !== "";

/** How a heading begins that names its unit already. */
const MINUTES = "minutes";
const namesUnit = (lowered: string): boolean => lowered.startsWith(MINUTES);

class ShownColumn implements ColumnSpec {
  constructor(
    readonly key: Column,
    readonly label: string,
    private readonly of: Of,
    private readonly fineness: number,
    readonly want: ColumnSpec["want"],
  ) {}

  get unit(): string {
    return isQuantity(this.of) ? unitOf(this.of) : this.of;
  }

  get decimals(): number {
    return isQuantity(this.of) ? decimalsOf(this.of, this.fineness) : this.fineness;
  }

  get axis(): string {
    const lowered = `${this.label.charAt(0).toLowerCase()}${this.label.slice(1)}`;
    return this.unit === "" || namesUnit(lowered) ? lowered : `${lowered}, ${this.unit}`;
  }

  readonly shown = (si: number): number => (isQuantity(this.of) ? inUnit(si, this.of) : si);
}

const column = (...of: ConstructorParameters<typeof ShownColumn>): ColumnSpec => new ShownColumn(...of);

/** In the order in which menus offer them. */
export const COLUMNS: readonly ColumnSpec[] = [
  column("margin", "Margin", "×", 2, "most"),
  column("mass", "Mass", "mass", 0, "least"),
  column("time", "Minutes", "duration", 1, "most"),
  column("keptTime", "Minutes kept", "duration", 1, "most"),
  column("windingTemperature", "Winding", "temperature", 0, "least"),
  column("price", "Price", "", 2, "least"),
  column("height", "Total height", "length", 1, "least"),
  column("rotorFactor", "Burst over speed", "×", 2, "most"),
  column("driving", "Margin driving", "×", 2, "most"),
  column("parked", "Margin parked", "×", 2, "most"),
  column("suction", "Pull", "load", 0, "most"),
  column("pressure", "Suction", "pressure", 0, "least"),
  column("flow", "Flow", "flow", 2, "least"),
  column("speed", "Speed", "speed", 0, "least"),
  column("packCurrent", "Pack current", "current", 2, "least"),
];

const MARGINS: readonly Column[] = ["margin", "driving", "parked"];

/** @returns the columns that a search has; that of a kept margin only where it is a wish */
export function columnsOf({ leastKeptTime }: Pick<ChooseRequest["wants"], "leastKeptTime">): ColumnSpec[] {
  return COLUMNS.filter(({ key }) => key !== "keptTime" || leastKeptTime !== null);
}

/** @returns unit of a column as its heading adds it: ", mm"; nothing where heading or cell have it */
export function headUnit(key: Column): string {
  const { axis, unit } = columnSpec(key);
  return unit === "" || unit === "×" || namesUnit(axis) ? "" : `, ${unit}`;
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
