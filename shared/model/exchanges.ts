import { z } from "zod";
import { BUILD } from "./limits.ts";
import { reference } from "./reference.ts";
import { positive } from "./scalar.ts";

const MOST = 20;
/** Of a propeller's build that does without a skirt, as a list of skirts names it in a message. */
const NO_SKIRT = "no skirt";

/** Refuses what the list has already. */
function once<T>(keyOf: (entry: T) => string) {
  return (list: readonly T[], context: z.RefinementCtx): void => {
    const keys = list.map(keyOf);
    keys.forEach((key, i) => {
      const first = keys.indexOf(key);
      if (first === i) return;
      const message = `Read ${key}, which is entry ${first + 1} already; allowed: each part once.`;
      context.addIssue({ code: "custom", path: [i], message });
    });
  };
}

const ids = (collection: "motors" | "packs") =>
  z
    .array(reference(collection))
    .max(MOST)
    .superRefine(once((id) => id))
    .default([]);

/** Parts of the book that may take the place of the build's own; its own, where it is listed, is no exchange. */
export const exchanges = z.strictObject({
  motors: ids("motors"),
  rotors: z
    .array(z.strictObject({ rotor: reference("rotors"), diameter: positive("m", BUILD.diameter) }))
    .max(MOST)
    .superRefine(once(({ rotor, diameter }) => `${rotor} of ${diameter} m`))
    .default([]),
  packs: ids("packs"),
  skirts: z
    .array(
      reference("skirts")
        .nullable()
        .describe("identifier of a stored skirt; null: none, with an open propeller alone"),
    )
    .max(MOST)
    .superRefine(once((id) => id ?? NO_SKIRT))
    .default([]),
});

export type Exchanges = z.output<typeof exchanges>;
