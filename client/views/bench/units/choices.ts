import { type DimensionName, dimension } from "../../../../shared/units/dimensions.ts";
import { CHOSEN, type ShownUnits, UNIT_SETS } from "../../../../shared/units/showing.ts";

const shownIn = (units: ShownUnits, name: DimensionName): string =>
  units[name] ?? dimension(name).shown[0].label;

/** @returns which of the two sets the units are; "own" where they are neither */
export function setOf(units: ShownUnits): "metric" | "inch" | "own" {
  const is = (set: ShownUnits) => CHOSEN.every((name) => shownIn(units, name) === shownIn(set, name));
  if (is(UNIT_SETS.metric)) return "metric";
  return is(UNIT_SETS.inch) ? "inch" : "own";
}

/** @returns the units with another for one quantity; the first is not named, so that a set is told by what it names */
export function withUnitOf(units: ShownUnits, name: DimensionName, label: string): ShownUnits {
  const { [name]: _before, ...others } = units;
  return label === dimension(name).shown[0].label ? others : { ...others, [name]: label };
}

/** @returns what a quantity is called, its units to choose from, the one that is chosen */
export function choiceOf(name: DimensionName, units: ShownUnits) {
  const { shown, chosenFor = name } = dimension(name);
  return {
    label: chosenFor,
    options: shown.map(({ label }) => ({ value: label, label })),
    value: shownIn(units, name),
  };
}
