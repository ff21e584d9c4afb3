import type { At } from "./path.ts";
import type { Box } from "./place.ts";
import type { Scale } from "./scales.ts";

/** What a layer needs beside its data. */
export interface Ground {
  /** of the plot [px] */
  readonly width: number;
  readonly height: number;
  readonly at: At;
  /** room for whole words; a narrow chart says less */
  readonly wide: boolean;
  /** how long curves take to their new place [ms] */
  readonly motion: number;
  /** whether a place lies in the plot, its edges included [px] */
  readonly shows: (x: number, y: number) => boolean;
  /** whether a name may stand there */
  readonly holds: (box: Box) => boolean;
}

/** The ground of straight axes. */
export interface Straight extends Ground {
  readonly x: Scale;
  readonly y: Scale;
}
