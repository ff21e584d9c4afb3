import { z } from "zod";
import { count, nonNegative, positive } from "../scalar.ts";
import { namedOnce } from "./namedOnce.ts";

const MOST_PARTS = 100;
const MOST_PIECES = 1000;
/** [m] */
const LONGEST = 100;

interface Size {
  readonly nominal: number;
  readonly tolerance: number;
}

const size = {
  nominal: positive("m", LONGEST),
  tolerance: nonNegative("m, half of the range it is made in", LONGEST),
};

const within = ({ nominal, tolerance }: Size) => tolerance <= nominal;
const otherwise = {
  path: ["tolerance"],
  error: ({ input }: { readonly input?: unknown }) => {
    const { nominal, tolerance } = input as Size;
    return `Read ${tolerance} m; allowed: no more than the size, ${nominal} m.`;
  },
};

const part = z
  .strictObject({
    name: z.string().max(120).optional().describe("name, as shown"),
    ...size,
    quantity: count({ min: 1, max: MOST_PIECES }).default(1).describe("pieces one upon the other"),
  })
  .refine(within, otherwise);

/** Body of POST /fit-up: the space between two faces, and the parts that take some of it. */
export const fitUpRequest = z.strictObject({
  space: z.strictObject(size).refine(within, otherwise),
  parts: z.array(part).min(1).max(MOST_PARTS).superRefine(namedOnce),
});

const limits = z.tuple([z.number(), z.number()]);

export const fitUpResponse = z.strictObject({
  clearance: z.number().describe("m, nominal; below 0 where the parts are higher than the space"),
  worstCase: limits.describe("m, every dimension at its end"),
  rss: limits.describe("m, root-sum-square of the tolerances"),
  chance: z.number().min(0).max(1).describe("of closing: normal, a tolerance is three standard deviations"),
  verdict: z
    .enum(["closes", "may-not-close", "will-not-close"])
    .describe(
      "will-not-close: even the upper limit of the root-sum-square is below 0; may-not-close: a lower limit is",
    ),
  contributions: z.array(
    z.strictObject({
      path: z.string().describe("as in the body: space, parts.0"),
      name: z.string().nullable(),
      worstCase: z.number().describe("m, half of the range that its pieces add to the worst case"),
      share: z.number().min(0).max(1).describe("of the clearance's variance"),
    }),
  ),
});
