import { z } from "zod";
import { identifier } from "../scalar.ts";
import { TEST_KINDS } from "../testKinds.ts";
import type { TestKind } from "../tests/index.ts";

/** Kinds of test that something is predicted for. */
export const FORETOLD_KINDS: readonly TestKind[] = ["pull", "leak", "curve", "thrust", "run-log"];

/** What of a test was predicted: the load of a pull [N], the flow of a leak [m³/s], the speed of a rotor on its stand [rad/s], the margin of a drive [-]. */
export const FORETOLD_FIGURES = ["pull", "leak", "speed", "margin"] as const;

const quantile = (share: string) =>
  z.number().nullable().describe(`${share} %; N, m³/s, rad/s or ×; null where no suction is needed`);

/** What was predicted for one row of a test, before that row counted. */
export const foretold = z.strictObject({
  row: z.int().min(0),
  figure: z.enum(FORETOLD_FIGURES),
  p5: quantile("5"),
  p50: quantile("50"),
  p95: quantile("95"),
  chance: z.number().min(0).max(1).nullable().describe("of holding, of a drive; null of anything else"),
  basis: z
    .enum(["then", "afterwards"])
    .describe("then: as the row was logged; afterwards: later, as if the test weren't there"),
});

/** Predictions of a test, kept with it. */
export const keptPrediction = z.strictObject({
  test: identifier(),
  at: z.iso.datetime(),
  rows: z.array(foretold).max(1000),
});

/** A row beside what was predicted for it. */
export const recordEntry = z.strictObject({
  ...foretold.shape,
  test: identifier(),
  kind: z.enum(TEST_KINDS),
  date: z.iso.date(),
  at: z.iso.datetime().describe("when it was predicted"),
  measured: z
    .strictObject({ low: z.number(), high: z.number().nullable() })
    .nullable()
    .describe(
      "N, m³/s, rad/s: bounds of what was measured, high null where it was not reached; null of a drive",
    ),
  held: z.boolean().nullable().describe("of a drive; null of anything else"),
  inside: z.boolean().nullable().describe("measured within 5 to 95 %; null of a drive"),
});

const ratio = (what: string) => z.number().nullable().describe(what);

/** Predicted against measured over all builds. */
export const recordSummary = z.strictObject({
  figure: z.enum(FORETOLD_FIGURES),
  count: z.int().min(0),
  inTime: z.int().min(0).describe("of them predicted as they were logged"),
  inside: ratio("share within 5 to 95 %; null of drives"),
  bias: ratio(
    "median of measured over predicted, less 1; null without any that was measured from both sides",
  ),
  drift: ratio("that of the later half less that of the earlier half; null with fewer than six"),
  said: ratio("mean chance of holding that was said, of drives"),
  held: ratio("share that held, of drives"),
});

export const trackRecord = z.strictObject({
  entries: z.array(recordEntry),
  summary: z.array(recordSummary),
  missing: z
    .int()
    .min(0)
    .describe("tests that no prediction was kept of: POST /record/predictions makes some"),
  owed: z.int().min(0).describe("tests whose prediction is still being worked out"),
});

export const foretoldAfterwards = z.strictObject({
  kept: z.int().min(0).describe("tests predicted now, as if they weren't there"),
  missing: z.int().min(0).describe("tests that are left"),
});

export type ForetoldFigure = (typeof FORETOLD_FIGURES)[number];
export type Foretold = z.output<typeof foretold>;
export type KeptPrediction = z.output<typeof keptPrediction>;
export type RecordEntry = z.output<typeof recordEntry>;
export type RecordSummary = z.output<typeof recordSummary>;
export type TrackRecord = z.output<typeof trackRecord>;
