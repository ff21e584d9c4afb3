import type { z } from "zod";
import type {
  combination,
  combinationsPage,
  missedAnswer,
  pointsAnswer,
  shortlistAnswer,
} from "../../../shared/model/api/choose.ts";

/** What the server answers, as its schemas say it. */
export type Combination = z.output<typeof combination>;
export type CombinationsPage = z.output<typeof combinationsPage>;
export type PointsAnswer = z.output<typeof pointsAnswer>;
export type MissedAnswer = z.output<typeof missedAnswer>;
export type ShortlistAnswer = z.output<typeof shortlistAnswer>;
export type Column = keyof Combination["values"];
export type Broken = Combination["broken"][number];
