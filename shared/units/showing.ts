import { DIMENSION_NAMES, type DimensionName, dimension, type ShownUnit } from "./dimensions.ts";

/** Labels of the units that a book shows, by quantity; one that isn't named is shown in its first. */
export type ShownUnits = Readonly<Partial<Record<DimensionName, string>>>;

/** Quantities whose unit is chosen for a book. */
export const CHOSEN = DIMENSION_NAMES.filter((name) => dimension(name).chosenFor !== undefined);

/** The two sets to begin with. */
export const UNIT_SETS: Readonly<Record<"metric" | "inch", ShownUnits>> = {
  metric: {},
  inch: Object.fromEntries(
    CHOSEN.flatMap((name) => {
      const { inch } = dimension(name);
      return inch === undefined ? [] : [[name, inch]];
    }),
  ),
};

/** Metric words until something else is said: the server's answers, the command line, tests. */
let units: () => ShownUnits = () => UNIT_SETS.metric;

/**
 * Says in which units every quantity of this thread is shown and a bare number is meant, as a locale would. The page says it
 * once as it starts, a thread of the page with each question; the server never does, so that its sentences stay metric.
 *
 * @param source - asked each time something is shown, so that what shows it may follow a change
 */
export function showUnitsOf(source: () => ShownUnits): void {
  units = source;
}

/** Does something as if quantities were shown, and bare numbers meant, in certain units. */
export function shownAs<T>(shown: ShownUnits, work: () => T): T {
  const before = units;
  units = () => shown;
  try {
    return work();
  } finally {
    units = before;
  }
}

/** @returns the units shown now, as plain data */
export const unitsShown = (): ShownUnits => units();

/**
 * The unit that a quantity is shown in.
 *
 * @param label - of a certain unit; the one that the book shows unless given
 * @throws {RangeError} when the quantity has no unit with that label
 */
export function shownUnit(name: DimensionName, label?: string): ShownUnit {
  const { shown } = dimension(name);
  if (label === undefined) {
    const chosen = units()[name];
    if (chosen === undefined) return shown[0];
    return shown.find((each) => each.label === chosen) ?? shown[0];
  }
  const found = shown.find((each) => each.label === label);
  if (!found) throw new RangeError(`${name} is not shown in "${label}"`);
  return found;
}

/** @returns label of the unit that a quantity is shown in: "mm" */
export const unitOf = (name: DimensionName): string => shownUnit(name).label;

/** Of a step in the first unit, so much is given away for shorter figures: 0.01 L/s is shown to 0.01 cfm, 1 g to 0.01 oz. */
const GIVEN_AWAY = 0.35;
const MOST_DECIMALS = 9;

/**
 * Decimals in the unit shown that are as fine as so many in the quantity's first unit.
 *
 * @param decimals - in the first unit; negative for tens and hundreds
 */
export function decimalsOf(name: DimensionName, decimals: number): number {
  const [first] = dimension(name).shown;
  const ratio = shownUnit(name).factor / first.factor;
  const more = ratio === 1 ? 0 : Math.ceil(Math.log10(ratio) - GIVEN_AWAY);
  return Math.min(MOST_DECIMALS, Math.max(0, decimals + more));
}

/** @returns what a column or an axis is called, with the unit shown there: "flow, L/s" */
export const headed = (what: string, name: DimensionName): string => `${what}, ${unitOf(name)}`;

/** @returns label of the unit in which a difference of a quantity is shown: of temperatures in °C it is the kelvin */
export function differenceUnitOf(name: DimensionName): string {
  const { label, factor, offset } = shownUnit(name);
  return offset !== undefined && factor === 1 ? dimension(name).si : label;
}
