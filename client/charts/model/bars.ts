import type { Tone } from "./plot.ts";

/** A bar from zero, in a row of its own. */
export interface Bar {
  readonly key: string;
  /** stands above it at the left */
  readonly name: string;
  /** stands above it at the right */
  readonly figure: string;
  readonly value: number;
  readonly tone: Tone;
}

/** Bars below one another about one zero line: those above zero filled, those below it hollow. */
export interface BarPlot {
  readonly bars: readonly Bar[];
  /** what the two sides of zero mean, written under them */
  readonly sides: { readonly below: string; readonly above: string };
}
