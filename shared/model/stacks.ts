import { z } from "zod";
import { namedOnce } from "./api/namedOnce.ts";
import { BUILD } from "./limits.ts";
import { count, name, nonNegative, positive } from "./scalar.ts";

/** What a stack is of, in the order in which they are shown: each has its picture and its words. */
export const STACK_KINDS = ["height", "pocket", "casing", "tip", "inlet", "gap", "other"] as const;
export type StackKind = (typeof STACK_KINDS)[number];

/** Sizes that parts of the book bring: a stack that names one follows the part that a build has. */
export const PART_DIMENSIONS = [
  "motor.length",
  "motor.diameter",
  "rotor.height",
  "rotor.diameter",
  "rotor.inletAir",
  "pack.height",
  "skirt.height",
  "gear.wheelRadius",
  "gear.sag",
] as const;
export type PartDimension = (typeof PART_DIMENSIONS)[number];

/** How a size is known; free: room that must stay, no part. */
export const SIZE_BASES = ["drawn", "measured", "free"] as const;
export type SizeBasis = (typeof SIZE_BASES)[number];

const { space: size, parts: filling } = BUILD.stacks;

const dimensionShape = {
  name: name(),
  of: z
    .enum(PART_DIMENSIONS)
    .optional()
    .describe("the size of a part that the build has, in the place of nominal"),
  nominal: positive("m", size.nominal).optional(),
  tolerance: nonNegative(
    "m, half of the range it is made in; 0.2 mm as drawn, 0.05 mm measured unless given",
    size.tolerance,
  ).optional(),
  basis: z
    .enum(SIZE_BASES)
    .default("drawn")
    .describe("free: room that must stay, without a tolerance unless given"),
};

type Sized = { readonly of?: PartDimension; readonly nominal?: number; readonly tolerance?: number };

/** A size is a part's or its own, and no smaller than its tolerance. */
function checkSize({ of, nominal, tolerance }: Sized, context: z.RefinementCtx): void {
  const refuse = (path: string, message: string) =>
    context.addIssue({ code: "custom", path: [path], message });
  if (of === undefined && nominal === undefined)
    refuse("nominal", "Missing; allowed: a size in m, for example 0.024, or of, the size of a part.");
  if (of !== undefined && nominal !== undefined)
    refuse("nominal", `Given together with of; allowed: one of them, as ${of} is in the part's record.`);
  if (nominal !== undefined && tolerance !== undefined && tolerance > nominal)
    refuse("tolerance", `Read ${tolerance} m; allowed: no more than the size, ${nominal} m.`);
}

const space = z.strictObject(dimensionShape).superRefine(checkSize);
const part = z
  .strictObject({
    ...dimensionShape,
    quantity: count(filling.quantity).default(1).describe("pieces one upon the other"),
  })
  .superRefine(checkSize);

const MOST_PARTS = 30;
const MOST_STACKS = 20;

/** Pieces of one part stand in a stack by their quantity: no size of a part is there twice. */
function partOnce(
  stack: { readonly space: Sized; readonly parts: readonly Sized[] },
  context: z.RefinementCtx,
): void {
  const seen = new Set(stack.space.of ? [stack.space.of] : []);
  stack.parts.forEach(({ of }, i) => {
    if (of === undefined) return;
    const message = `Read ${of}, which this stack has already; allowed: each part once, with its quantity.`;
    if (seen.has(of)) context.addIssue({ code: "custom", path: ["parts", i, "of"], message });
    seen.add(of);
  });
}

/** Parts between two faces of the housing. */
const stack = z
  .strictObject({
    name: name(),
    kind: z.enum(STACK_KINDS).default("other"),
    space: space.describe("from face to face"),
    parts: z.array(part).min(1).max(MOST_PARTS).superRefine(namedOnce),
  })
  .superRefine(partOnce);

/** The stacks of a build's housing. */
export const stacks = z.array(stack).max(MOST_STACKS).superRefine(namedOnce);

export type StoredStack = z.output<typeof stack>;
export type StoredPart = StoredStack["parts"][number];
