import type { Scale } from "../../../charts/axes.ts";

/** What a layer of the match chart needs beside its data. */
export interface MatchContext {
  readonly x: Scale;
  readonly y: Scale;
  /** of the plot [px] */
  readonly width: number;
  readonly height: number;
  /** between the plot and the drawing's right edge [px] */
  readonly right: number;
  /** how long curves take to their new place [ms] */
  readonly duration: number;
  /** room for labels right of the plot; without it they stand inside */
  readonly wide: boolean;
}
