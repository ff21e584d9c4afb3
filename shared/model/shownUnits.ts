import { z } from "zod";
import { dimension } from "../units/dimensions.ts";
import { CHOSEN, type ShownUnits } from "../units/showing.ts";

const shape = Object.fromEntries(
  CHOSEN.map((name) => {
    const { shown, chosenFor } = dimension(name);
    const labels = shown.map(({ label }) => label);
    return [name, z.enum(labels).optional().describe(`${chosenFor}; ${labels[0]} unless given`)];
  }),
);

/** Labels of the units that a book shows, by quantity; one that isn't named is shown in its first. */
export const shownUnits = z
  .strictObject(shape)
  .meta({ examples: [{ length: "in", flow: "cfm" }] }) as unknown as z.ZodType<ShownUnits>;
