import type { ColumnSpec } from "./spec.ts";

/** @returns the value that a text chooses, by itself or by its label; null where it is none of them */
export function optionOf(options: NonNullable<ColumnSpec["options"]>, text: string): string | null {
  const said = text.trim().toLowerCase();
  const found = options.find(
    ([value, label]) => said === value.toLowerCase() || said === label.toLowerCase(),
  );
  return found ? found[0] : null;
}
