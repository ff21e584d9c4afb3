import { z } from "zod";
import { SEARCH } from "../limits.ts";
import { fraction, identifier, nonNegative, positive, within } from "../scalar.ts";
import { verdict, warning } from "./predict.ts";

/** Most entries of one list of parts to try. */
const MOST_LISTED = 400;

/** First and last value and the step between; a step of 0 is refused where the ends differ. */
const lengths = ({ from, to, step }: Readonly<Record<"from" | "to" | "step", { readonly max: number }>>) =>
  z
    .strictObject({
      from: nonNegative("m", from),
      to: nonNegative("m", to),
      step: nonNegative("m", step).default(0),
    })
    .superRefine((range, context) => {
      const refuse = (path: string, message: string) =>
        context.addIssue({ code: "custom", path: [path], message });
      if (range.to < range.from)
        refuse("to", `Read ${range.to}; allowed: ${range.from} or greater, the range's end`);
      if (range.to > range.from && range.step === 0)
        refuse("step", "Read 0; allowed: above 0 where the ends differ, for example 0.001");
    });

const listed = <S extends z.ZodType>(entry: S) =>
  z.array(entry).min(1, "name at least one to try").max(MOST_LISTED);

const wantedAttitude = z.strictObject({
  angle: z.union([within("degrees", 0, 180), z.literal("worst")]),
  mode: z.enum(["parked", "driving"]),
});

export const chooseWants = z.strictObject({
  attitudes: z
    .array(wantedAttitude)
    .min(1, "name at least one attitude that must hold")
    .max(24)
    .default([{ angle: "worst", mode: "driving" }]),
  targetMargin: within("", SEARCH.wants.targetMargin).default(1.5),
  leastCrossing: within("", SEARCH.wants.leastCrossing)
    .nullable()
    .default(null)
    .describe("margin on the same attitudes while it crosses each joint of the surface"),
  leastTime: nonNegative("s, to the end of the charge", SEARCH.wants.leastTime).nullable().default(null),
  leastKeptTime: nonNegative(
    "s, for which a controller keeps the target margin on the hardest attitude, 0 to rank by it alone",
    SEARCH.wants.leastKeptTime,
  )
    .nullable()
    .default(null),
  mostWinding: within("K", SEARCH.wants.mostWinding).nullable().default(null),
  leastRotorFactor: positive("burst speed over speed", SEARCH.wants.leastRotorFactor)
    .nullable()
    .default(null),
  mostHeight: positive("m, stack of motor, rotor, pack and skirt", SEARCH.wants.mostHeight)
    .nullable()
    .default(null),
  mostPrice: nonNegative("any currency").nullable().default(null),
  closes: z
    .boolean()
    .default(false)
    .describe("every stack of the build's Fit-up closes at its worst case, with the combination's own parts"),
  ratings: z
    .boolean()
    .default(true)
    .describe("keep to the makers' motor current, motor voltage and cell current where they are known"),
  leastChance: fraction().nullable().default(null).describe("chance of holding, judged for a shortlist"),
});

/** Body of POST /choose: the parts to try, by the book's parts; the rest is as in a build. */
export const chooseRequest = z.strictObject({
  build: identifier().describe("the build that gives vehicle, air, supply, surface and charge"),
  motors: listed(identifier()),
  rotors: listed(
    z.strictObject({
      rotor: identifier(),
      diameters: lengths(SEARCH.diameters)
        .refine(({ from }) => from > 0, {
          path: ["from"],
          message: "Read 0; allowed: above 0, a rotor's size",
        })
        .optional()
        .describe("the family's own sizes unless given"),
    }),
  ),
  packs: listed(identifier()),
  skirts: listed(
    z
      .strictObject({
        skirt: identifier()
          .nullable()
          .describe("null: without a skirt, as open propellers may be; a rotor in a duct pulls through one"),
        gaps: lengths(SEARCH.gaps)
          .optional()
          .describe(
            "the skirt's own gap, calibrated where tests tell it, unless given; a propeller is tried with each skirt once",
          ),
      })
      .refine(({ skirt, gaps }) => skirt !== null || gaps === undefined, {
        path: ["gaps"],
        message: "Read gaps without a skirt; allowed: none, since there is no lip",
      }),
  ),
  duties: listed(within("fraction of the pack's voltage", SEARCH.duties)).default([1]),
  wants: chooseWants.prefault({}),
});

export const JOB_STATES = ["queued", "running", "done", "cancelled", "failed"] as const;

/** How far a job has come. */
export const chooseJob = z.strictObject({
  id: z.string(),
  state: z.enum(JOB_STATES),
  sets: z.int().describe("to solve"),
  solved: z.int(),
  admissible: z.int().describe("of the solved ones"),
  startedAt: z.iso.datetime(),
  seconds: z.number().describe("since it began to run; its whole time once it ended"),
  request: chooseRequest,
  error: z.string().nullable(),
  notes: z.array(warning).describe("what the combinations take for granted"),
});

const nullable = z.number().nullable();

/** SI; null: no suction needed, not known, or not computed. */
const values = z.strictObject({
  speed: nullable.describe("rad/s"),
  flow: nullable.describe("m³/s"),
  pressure: nullable.describe("Pa"),
  suction: nullable.describe("N; of an open propeller its thrust"),
  parked: nullable.describe("least margin over the attitudes wanted parked"),
  driving: nullable.describe("least margin over the attitudes wanted driving"),
  crossing: nullable.describe(
    "least of both over the joints of the surface; null where crossing them is no wish",
  ),
  windingTemperature: nullable.describe("K"),
  packCurrent: nullable.describe("A"),
  time: nullable.describe("s, to the end of the charge"),
  keptTime: nullable.describe(
    "s, a controller keeps the target margin, to the end of the charge or to where full throttle is too little; null where that is no wish, where no pull is needed, or not known",
  ),
  margin: nullable.describe("the lesser of parked and driving"),
  mass: nullable.describe("kg, whole vehicle"),
  rotorFactor: nullable.describe("burst speed over speed; null for an open propeller"),
  height: nullable.describe("m"),
  price: nullable,
});
export const CHOOSE_COLUMNS = values.keyof().options;

/** One combination, as a row shows it. */
export const combination = z.strictObject({
  index: z.int(),
  parts: z.strictObject({
    motor: z.string(),
    rotor: z.string(),
    pack: z.string(),
    skirt: z.string().nullable(),
  }),
  diameter: z.number().describe("m"),
  gap: z.number().nullable().describe("m; null: an open propeller, whatever the gap"),
  duty: z.number(),
  values,
  trust: z.strictObject({
    basis: z.enum(["measured", "two-point", "estimated"]),
    scaled: z.boolean(),
    sizeRatio: nullable.describe("diameter over the nearest tested one"),
    speedRatio: nullable.describe("tip speed over the nearest tested one"),
    extrapolated: z.boolean(),
    coldWinding: z.boolean(),
  }),
  broken: z
    .array(z.strictObject({ limit: z.string(), value: nullable, allowed: nullable }))
    .describe("limits that it breaks, the first one first"),
  onFront: z.boolean().describe("no other combination is better in margin, mass and minutes at once"),
});

const wholeNumber = (low: number, high: number, otherwise: number) =>
  z.coerce.number().int().min(low).max(high).default(otherwise);

/** Query of a page of combinations. */
export const combinationsQuery = z.strictObject({
  sort: z.enum(CHOOSE_COLUMNS).default("margin"),
  order: z.enum(["least", "most"]).default("most"),
  only: z.enum(["admissible", "front", "all"]).default("admissible"),
  kind: z.enum(["any", "ducted", "open"]).default("any").describe("rotors in a duct, or open propellers"),
  from: wholeNumber(0, 1e9, 0).describe("place of the first row"),
  limit: wholeNumber(1, 500, 100),
});

export const combinationsPage = z.strictObject({
  total: z.int().describe("rows in this sorting"),
  from: z.int(),
  items: z.array(combination),
});

/** Query of the plot's points. */
export const pointsQuery = z.strictObject({
  x: z.enum(CHOOSE_COLUMNS).default("mass"),
  y: z.enum(CHOOSE_COLUMNS).default("margin"),
  limit: wholeNumber(10, 20_000, 4000),
});

/** Points of a plot: thinned by place where there are more than asked for; the front is always whole. */
export const pointsAnswer = z.strictObject({
  total: z.int(),
  points: z.array(
    z
      .tuple([z.int(), z.number(), z.number(), z.int()])
      .describe("index, x, y, 1 admissible + 2 on the front + 4 with an open propeller"),
  ),
});

/** Query of a shortlist: the first combinations of a ranking, their uncertainty worked out. */
export const shortlistQuery = z.strictObject({
  sort: z.enum(CHOOSE_COLUMNS).default("margin"),
  order: z.enum(["least", "most"]).default("most"),
  only: z.enum(["admissible", "front", "all"]).default("admissible"),
  count: wholeNumber(1, 100, 24).describe("combinations to judge"),
  rank: z
    .enum(["chance", "margin5", "margin"])
    .default("margin5")
    .describe("what the shortlist is ranked by"),
});

export const shortlistAnswer = z.strictObject({
  items: z.array(
    z.strictObject({
      place: z.int().describe("combinations that differ by less than their uncertainty share one"),
      verdict: verdict.describe("as of a build of the same parts; the better ones come first"),
      chance: z.number().describe("chance of holding, the least of the wanted attitudes"),
      margin5: nullable.describe("margin that 95 % of the samples reach; null where no suction is needed"),
      deviation: z.number().describe("standard deviation of the margin"),
      enough: z.boolean().describe("chance is at least the wanted one"),
      set: combination,
    }),
  ),
  undoubted: z.boolean().describe("no uncertainty is stated anywhere: the chances say nothing"),
});

/** Told by events while a choosing runs: of the pieces solved since, the admissible combinations of most margin. */
export const toldCombinations = z.strictObject({ best: z.array(combination.omit({ onFront: true })) });

/** What keeps combinations out: how many each limit does, the least change of each alone that lets one in, and the nearest combinations. */
export const missedAnswer = z.strictObject({
  admissible: z.int(),
  limits: z.array(
    z.strictObject({
      limit: z.string(),
      broken: z.int().describe("combinations that break it"),
      alone: z.int().describe("combinations that break it and no other"),
    }),
  ),
  relaxations: z.array(
    z.strictObject({ limit: z.string(), from: z.number(), to: z.number(), index: z.int() }),
  ),
  nearest: z.array(
    z.strictObject({
      shortfall: z
        .number()
        .describe("sum over the broken limits of what is missing, relative to what is allowed"),
      set: combination,
    }),
  ),
});

export type ChooseRequest = z.output<typeof chooseRequest>;
export type ChooseJob = z.output<typeof chooseJob>;
export type JobState = ChooseJob["state"];
export type CombinationsQuery = z.output<typeof combinationsQuery>;
export type ShortlistQuery = z.output<typeof shortlistQuery>;
export type ToldCombinations = z.output<typeof toldCombinations>;
export type PointsQuery = z.output<typeof pointsQuery>;
