import { z } from "zod";
import { type DimensionName, dimension } from "../units/dimensions.ts";
import { formatQuantity } from "../units/format.ts";
import { parseQuantity, toSI, UnitError } from "../units/parse.ts";

export interface QuantityLimits {
  /** least SI value, inclusive */
  readonly min?: number;
  /** greatest SI value, inclusive */
  readonly max?: number;
  /** refuse exactly 0 as well */
  readonly positive?: boolean;
}

const allowed = (dimensionName: DimensionName, { min, max, positive }: QuantityLimits): string => {
  const low = positive
    ? "more than 0"
    : min === undefined
      ? ""
      : `at least ${formatQuantity(min, dimensionName)}`;
  const high = max === undefined ? "" : `at most ${formatQuantity(max, dimensionName)}`;
  return [low, high].filter(Boolean).join(", ");
};

function outside(si: number, { min, max, positive }: QuantityLimits): boolean {
  return (
    (positive === true && !(si > 0)) || (min !== undefined && si < min) || (max !== undefined && si > max)
  );
}

/**
 * A reading as typed, number and unit kept, its dimension and limits checked in SI.
 *
 * @param dimensionName - which quantity it must be
 * @param limits - SI limits, both inclusive
 */
export function quantity(dimensionName: DimensionName, limits: QuantityLimits = {}) {
  return z
    .strictObject({ value: z.number(), unit: z.string().max(24) })
    .superRefine((typed, context) => {
      try {
        const si = toSI(typed, dimensionName);
        if (!outside(si, limits)) return;
        const message = `Read ${typed.value} ${typed.unit}; allowed: ${allowed(dimensionName, limits)}, for example "${dimension(dimensionName).example}".`;
        context.addIssue({ code: "custom", path: ["value"], message });
      } catch (error) {
        if (!(error instanceof UnitError)) throw error;
        context.addIssue({ code: "custom", path: ["unit"], message: error.message });
      }
    })
    .meta({
      description: `${dimensionName} as typed, any unit of it, for example "${dimension(dimensionName).example}"`,
      examples: [parseQuantity(dimension(dimensionName).example, dimensionName)],
    });
}
