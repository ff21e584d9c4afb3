import { z } from "zod";
import { needsSkirt, predictBody, warning } from "./predict.ts";
import { wanted } from "./wanted.ts";

/** Body of POST /sensitivities: a build as in /predict, and which margin is asked about. */
export const sensitivitiesRequest = z
  .strictObject({ ...predictBody, ...wanted })
  .refine(needsSkirt.check, needsSkirt.otherwise);

/** Answer of POST /sensitivities. */
export const sensitivitiesResponse = z.strictObject({
  margin: z.number().nullable().describe("null where no pull is needed"),
  sensitivities: z.array(
    z.strictObject({
      path: z.string().describe("as in the body; rotor.psi and rotor.lambda are the whole curves"),
      value: z.number().describe("SI; 1 for a curve"),
      elasticity: z.number().describe("per cent of margin per per cent of the input"),
    }),
  ),
  warnings: z.array(warning),
});
