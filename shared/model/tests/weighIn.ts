import { z } from "zod";
import { TESTS } from "../limits.ts";
import { quantity } from "../quantity.ts";
import { reference } from "../reference.ts";
import { type Inlined, instrument, setAside, testHead } from "./common.ts";

export const weighInRow = z
  .strictObject({
    reading: quantity("load", TESTS["weigh-in"].rows.reading).describe(
      "of the scale, what it stood in taken off",
    ),
    setAside,
  })
  .describe("one weighing; take it off and put it on again for the next");

/** The parts that may stand on a scale, by their keys in a test. */
export const WEIGHED_PARTS = ["rotor", "motor", "pack", "skirt", "gear"] as const;

type Said = { readonly weighed: string; readonly build?: string | null; readonly what?: string } & {
  readonly [K in (typeof WEIGHED_PARTS)[number]]?: string | null;
};

/** @returns what is wrong with what is said to have stood on the scale, and the field it belongs to; null where nothing is */
export function weighedProblem(
  test: Said,
): { readonly path: "build" | "rotor" | "what"; readonly message: string } | null {
  const parts = WEIGHED_PARTS.filter((key) => test[key]);
  if (test.weighed === "build") {
    if (!test.build) return { path: "build", message: "Choose the build that was weighed." };
    if (parts.length > 0)
      return { path: "rotor", message: "A whole build was weighed: name no parts beside it." };
    return null;
  }
  if (test.build) return { path: "build", message: "Parts were weighed: name no build beside them." };
  if (test.weighed === "part" && parts.length > 1)
    return { path: "rotor", message: "Choose one part, or say that several were weighed together." };
  if (parts.length === 0 && !test.what)
    return { path: "what", message: "Choose a part, or say in words what was weighed." };
  return null;
}

/** Weigh-in: what a part, several together, or a whole build weigh. */
export const weighInTest = z
  .strictObject({
    kind: z.literal("weigh-in"),
    ...testHead,
    weighed: z
      .enum(["build", "part", "assembly"])
      .describe("a whole build, one part, several parts together"),
    build: reference("builds").nullable().default(null).describe("the whole build, pack and all"),
    rotor: reference("rotors").nullable().default(null),
    diameter: quantity("length", TESTS["weigh-in"].diameter).optional().describe("of the rotor"),
    motor: reference("motors").nullable().default(null),
    pack: reference("packs").nullable().default(null),
    skirt: reference("skirts").nullable().default(null),
    gear: reference("gears").nullable().default(null).describe("running gear"),
    what: z.string().trim().max(120).default("").describe("what else stood on the scale"),
    instruments: z.strictObject({ load: instrument("load").optional() }).default({}),
    rows: z.array(weighInRow).min(1).max(1000),
  })
  .superRefine((test, context) => {
    const problem = weighedProblem(test);
    if (problem) context.addIssue({ code: "custom", path: [problem.path], message: problem.message });
  });

/** As fits read it: whatever it names of the book is described in its place. */
export type WeighInTest = Inlined<z.output<typeof weighInTest>>;
