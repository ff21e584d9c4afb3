import { parseNumber } from "../../../shared/units/number.ts";

/** A handle of this view, in the unit it is shown in. */
export interface RunHandle {
  readonly label: string;
  /** "%", "×" */
  readonly unit: string;
  readonly limits: readonly [number, number];
  readonly step: number;
  readonly example: string;
}

export const START_CHARGE: RunHandle = {
  label: "Charge at the start, %",
  unit: "%",
  limits: [1, 100],
  step: 1,
  example: "100",
};

export const TARGET_MARGIN: RunHandle = {
  label: "Margin wanted, ×",
  unit: "×",
  limits: [1, 20],
  step: 0.05,
  example: "1.5",
};

/**
 * Reads what was typed into a handle.
 *
 * @param text - a number in the shown unit, the unit itself may follow it
 * @returns the number, or a message that names what was read, what is allowed and an example
 */
export function readHandle(
  handle: RunHandle,
  text: string,
): { readonly value: number } | { readonly problem: string } {
  const { unit, limits, example } = handle;
  const trimmed = text.trim();
  const hint = `allowed: ${limits[0]} to ${limits[1]}\u2009${unit}, for example “${example}”.`;
  if (trimmed === "") return { problem: `Nothing was typed; ${hint}` };
  const bare = trimmed.endsWith(unit) ? trimmed.slice(0, -unit.length) : trimmed;
  const value = parseNumber(bare);
  if (value === null) return { problem: `Read “${trimmed}”, which is no number here; ${hint}` };
  if (!(value >= limits[0] && value <= limits[1])) return { problem: `Read “${trimmed}”; ${hint}` };
  return { value };
}
