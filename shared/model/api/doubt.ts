import { z } from "zod";
import { valueAt } from "./schemaAt.ts";

/** Inputs that a sample may vary at once, as many as the samples have dimensions for. */
const MOST_UNCERTAIN = 40;
/** Numbers that count something: they are what they are. */
const COUNTS = new Set(["pack.series", "pack.parallel"]);
/** Keys of a body that hold no build. */
const NO_BUILD = new Set(["uncertainty", "samples", "seed"]);

interface WithUncertainty {
  readonly uncertainty?: Readonly<Record<string, number>>;
}

function problemOf(body: object, path: string): string | null {
  const keys = path.split(".");
  if (COUNTS.has(path)) return "a count carries no uncertainty";
  const known = !NO_BUILD.has(keys[0]) && !keys.includes("length");
  if (known && typeof valueAt(body, keys) === "number") return null;
  return `there is no number at ${JSON.stringify(path)} in this request; allowed: the path of one, for example "skirt.gap"`;
}

/** Refuses the uncertainty of anything that is no number of the request, by its path. */
export function checkUncertainty(body: WithUncertainty, context: z.core.$RefinementCtx): void {
  const paths = Object.keys(body.uncertainty ?? {});
  if (paths.length > MOST_UNCERTAIN) {
    const message = `Read ${paths.length} paths; allowed: at most ${MOST_UNCERTAIN}`;
    context.addIssue({ code: "custom", path: ["uncertainty"], message });
  }
  for (const path of paths) {
    const message = problemOf(body, path);
    if (message) context.addIssue({ code: "custom", path: ["uncertainty", path], message });
  }
}

const spread = z.strictObject({
  p5: z.number().nullable().describe("margin; null where no suction is needed"),
  p50: z.number().nullable(),
  p95: z.number().nullable(),
  holds: z.number().describe("share of samples with a margin of 1 or more, or no suction needed"),
});

/** What the uncertainties make of a prediction. */
export const doubt = z.strictObject({
  attitudes: z.array(
    z.strictObject({ angle: z.number().describe("degrees"), parked: spread, driving: spread }),
  ),
  shares: z.array(
    z.strictObject({
      path: z.string(),
      share: z.number().describe("of the variance of the worst driving margin"),
    }),
  ),
});
