import { z } from "zod";
import { type DimensionName, dimension } from "../units/dimensions.ts";
import { type Limits, limitsInWords, withinLimits } from "../units/limits.ts";
import { parseQuantity, toSI, UnitError } from "../units/parse.ts";
import { refusalText } from "../units/quantity.ts";

/**
 * A reading as typed, number and unit kept, its dimension and limits checked in SI.
 *
 * @param name - which quantity it must be
 * @param limits - in SI
 */
export function quantity(name: DimensionName, limits: Limits = {}) {
  const { example } = dimension(name);
  return z
    .strictObject({ value: z.number(), unit: z.string().max(24) })
    .superRefine(({ value, unit }, context) => {
      try {
        if (withinLimits(toSI({ value, unit }, name), limits) !== null) return;
        const allowed = limitsInWords(limits, { dimension: name, unit });
        const message = refusalText(`${value} ${unit}`, allowed, example);
        context.addIssue({ code: "custom", path: ["value"], message });
      } catch (error) {
        if (!(error instanceof UnitError)) throw error;
        context.addIssue({ code: "custom", path: ["unit"], message: error.message });
      }
    })
    .meta({
      description: `${name} as typed, any unit of it, for example "${example}"`,
      examples: [parseQuantity(example, name)],
    });
}
