import { z } from "zod";
import { valueAt } from "./schemaAt.ts";

/** Inputs that a sample may vary at once, as many as the samples have dimensions for. */
const MOST_UNCERTAIN = 40;
/** Numbers that count something: they are what they are. */
const COUNT = /^(pack\.(series|parallel)|skirt\.\w+\.\d+\.count)$/;
/** Keys of a body that hold no build. */
const NO_BUILD = new Set([
  "uncertainty",
  "correlated",
  "samples",
  "seed",
  "targetMargin",
  "motorLimits",
  "cellLimits",
  "rotorBody",
]);
/** Two entries that should be one differ by no more than this share of their size. */
const SYMMETRY = 1e-9;

/** Numbers that are uncertain together. */
export const correlatedGroup = z.strictObject({
  paths: z.array(z.string().max(64)).min(1).max(MOST_UNCERTAIN).describe("of numbers of this request"),
  covariance: z
    .array(z.array(z.number()))
    .max(MOST_UNCERTAIN)
    .describe("of the numbers in the order of the paths, in the product of their units; symmetric"),
});

type Group = z.output<typeof correlatedGroup>;

interface WithUncertainty {
  readonly uncertainty?: Readonly<Record<string, number>>;
  readonly correlated?: readonly Group[];
}

function problemOf(body: object, path: string): string | null {
  const keys = path.split(".");
  if (COUNT.test(path)) return "a count carries no uncertainty";
  const known = !NO_BUILD.has(keys[0]) && !keys.includes("length");
  if (known && typeof valueAt(body, keys) === "number") return null;
  return `there is no number at ${JSON.stringify(path)} in this request; allowed: the path of one, for example "skirt.gap"`;
}

interface Problem {
  readonly path: readonly (string | number)[];
  readonly message: string;
}

/** Each path of a group: a number of the request, and nowhere else uncertain. */
function pathProblems(body: WithUncertainty, { paths }: Group, taken: Set<string>): Problem[] {
  return paths.flatMap((path, i) => {
    const twice = taken.has(path)
      ? `${JSON.stringify(path)} has its uncertainty elsewhere; allowed: once`
      : null;
    taken.add(path);
    const message = problemOf(body, path) ?? twice;
    return message ? [{ path: ["paths", i], message }] : [];
  });
}

/** A square of the paths' size, symmetric; whether it is a covariance at all, the computation sees. */
function squareProblems({ paths, covariance }: Group): Problem[] {
  const n = paths.length;
  if (covariance.length !== n || covariance.some((row) => row.length !== n))
    return [{ path: ["covariance"], message: `allowed: ${n} rows of ${n} numbers, one for each path` }];
  return covariance.flatMap((row, i) =>
    row.slice(0, i).flatMap((value, j) => {
      const other = covariance[j][i];
      const even = Math.abs(value - other) <= SYMMETRY * Math.max(Math.abs(value), Math.abs(other));
      const message = `Read ${value}, and ${other} on the other side; allowed: the same number on both`;
      return even ? [] : [{ path: ["covariance", i, j], message }];
    }),
  );
}

function groupProblems(body: WithUncertainty): Problem[] {
  const taken = new Set(Object.keys(body.uncertainty ?? {}));
  return (body.correlated ?? []).flatMap((group, g) =>
    [...pathProblems(body, group, taken), ...squareProblems(group)].map(({ path, message }) => ({
      path: ["correlated", g, ...path],
      message,
    })),
  );
}

/** Refuses the uncertainty of anything that is no number of the request, by its path. */
export function checkUncertainty(body: WithUncertainty, context: z.core.$RefinementCtx): void {
  const paths = Object.keys(body.uncertainty ?? {});
  const count = (body.correlated ?? []).reduce((sum, group) => sum + group.paths.length, paths.length);
  if (count > MOST_UNCERTAIN) {
    const message = `Read ${count} paths; allowed: at most ${MOST_UNCERTAIN}`;
    context.addIssue({ code: "custom", path: ["uncertainty"], message });
  }
  for (const path of paths) {
    const message = problemOf(body, path);
    if (message) context.addIssue({ code: "custom", path: ["uncertainty", path], message });
  }
  for (const { path, message } of groupProblems(body))
    context.addIssue({ code: "custom", path: [...path], message });
}

const quantiles = z.strictObject({
  p5: z.number().nullable(),
  p50: z.number().nullable(),
  p95: z.number().nullable(),
});

/** What a margin is known to. */
export const spread = z.strictObject({
  p5: z.number().nullable().describe("margin; null where no suction is needed"),
  p50: z.number().nullable(),
  p95: z.number().nullable(),
  holds: z.number().describe("share of samples with a margin of 1 or more, or no suction needed"),
});

/** A margin's spread on one attitude. */
export const attitudeSpread = z.strictObject({
  angle: z.number().describe("degrees"),
  parked: spread,
  driving: spread,
});

/** What the uncertainties make of a prediction. */
export const doubt = z.strictObject({
  attitudes: z.array(attitudeSpread),
  samplingError: z
    .array(z.strictObject({ angle: z.number(), parked: z.number(), driving: z.number() }))
    .describe("of each attitude's holds: an upper bound of its standard deviation"),
  suction: quantiles.describe("N"),
  point: z
    .strictObject({ flow: quantiles.describe("m³/s"), pressure: quantiles.describe("Pa") })
    .nullable()
    .describe("null for a propeller, or where the rotor stands"),
  shares: z.array(
    z.strictObject({
      path: z.string().describe('of a correlated group all its paths, joined by " + "'),
      share: z.number().describe("of the variance of the worst driving margin"),
    }),
  ),
});
