import type { DrawnField } from "./field.ts";

/** What a chart is made of: plain data in the units of its axes, no scale and no DOM in it. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface Axis {
  /** quantity and unit: "flow, L/s" */
  readonly label: string;
  readonly from: number;
  readonly to: number;
  readonly log?: boolean;
}

/** Colours that mean something; each goes with a line style, a shape or a word. */
export type Tone = "rotor" | "leak" | "needed" | "ink" | "quiet" | "bad";

/** A band between two heights along the chart; a height that is not finite breaks it. */
export interface Band {
  readonly key: string;
  readonly tone: Tone;
  /** the mean's band is darker than the band for one more reading */
  readonly strength: "mean" | "prediction";
  readonly points: readonly { readonly x: number; readonly lo: number; readonly hi: number }[];
}

/** A ribbon between any two curves: the points of either that face one another. */
export interface Ribbon extends Pick<Band, "key" | "tone" | "strength"> {
  readonly edges: readonly (readonly [Point, Point])[];
}

/** Solid within the tested range, dashed beyond it; dots for a comparison; any other dash pattern for builds laid over. */
export type Style = "solid" | "long" | "dashed" | "dots" | { readonly dash: string };

export interface Line {
  readonly key: string;
  readonly tone: Tone;
  readonly style: Style;
  /** "normal" unless said; a broad one lies under others */
  readonly weight?: "fine" | "normal" | "heavy" | "broad";
  readonly points: readonly Point[];
  /** stands at the line's end, beside the plot */
  readonly label?: SideText;
  /** stands beside the line, in the plot */
  readonly name?: Name;
}

/** Words beside the plot. */
export type SideText =
  | string
  | {
      readonly text: string;
      /** on a narrow chart; without it a line is named in the legend there, a level nowhere */
      readonly short?: string;
      /** what the text ends with, kept where a long one is cut */
      readonly tail?: string;
    };

/** Words in the plot, a line each: placed where they cover neither each other nor a curve. */
export interface Name {
  readonly lines: readonly string[];
  /** on a narrow chart */
  readonly short?: readonly string[];
  /** places along the line where they may stand, as shares of it, the best first */
  readonly along?: readonly number[];
}

/** A reading: one outlined shape a test. */
export interface Mark extends Point {
  readonly key: string;
  /** index into the shapes, one a test */
  readonly shape: number;
  readonly tone: Tone;
  readonly aside: boolean;
  readonly outlier: boolean;
  /** one of thousands, drawn small and full */
  readonly small?: boolean;
}

/** A reading known only to lie between two bounds, across or along the chart. */
export interface Bracket {
  readonly key: string;
  readonly along: "x" | "y";
  /** the place on the other axis */
  readonly at: number;
  readonly lo: number;
  /** null where the test was stopped before: open upwards */
  readonly hi: number | null;
  readonly tone: Tone;
  readonly aside: boolean;
}

export interface ShapeLabel {
  readonly key: string;
  readonly shape: number;
  readonly text: string;
}

/** A straight line across the whole plot: zero, a mean, what is needed. */
export interface Level {
  readonly key: string;
  readonly along: "x" | "y";
  readonly at: number;
  readonly tone: Tone;
  /** "solid" unless said */
  readonly style?: Style;
  /** beside the plot; a level beyond the plot is named at its end with an arrow */
  readonly label?: SideText;
}

/** A computed point: where the build settles, where a margin is lost. */
export interface Ring extends Point {
  readonly key: string;
  /** as it is, as it was before anything was tried, or chosen among others */
  readonly look: "predicted" | "before" | "chosen";
  /** stands in the ring */
  readonly letter?: string;
  readonly name?: Name;
}

/** 5 to 95 % of samples, as whiskers that cross at the middle one. */
export interface Spread {
  readonly key: string;
  readonly at: Point;
  readonly x?: readonly [from: number, to: number];
  readonly y?: readonly [from: number, to: number];
}

/** A hatched part of the plot, named at its place. */
export interface Region {
  readonly key: string;
  readonly tone: Tone;
  readonly outline: readonly Point[];
  readonly name?: Name;
}

export interface Strip {
  /** cut where it is too long */
  readonly title: string;
  /** never cut */
  readonly detail: string;
}

/** A place at which the chart can be read besides its marks, brackets and rings: a moment of a run, a whole degree. */
export interface Stop extends Point {
  readonly key: string;
}

/** What is drawn alike on straight and on polar axes. */
export interface Layers {
  readonly regions?: readonly Region[];
  readonly bands?: readonly Band[];
  readonly ribbons?: readonly Ribbon[];
  readonly lines?: readonly Line[];
  readonly spreads?: readonly Spread[];
  readonly marks?: readonly Mark[];
  readonly rings?: readonly Ring[];
  readonly stops?: readonly Stop[];
}

export interface Plot extends Layers {
  readonly x: Axis;
  readonly y: Axis;
  /** the same heights in another unit, at the right */
  readonly right?: Axis;
  readonly field?: DrawnField;
  readonly levels?: readonly Level[];
  readonly brackets?: readonly Bracket[];
  /** one a test, in the order of the shapes */
  readonly shapes?: readonly ShapeLabel[];
  /** the names stand on the chart above; their room is kept, so that both charts share their x axis */
  readonly namedAbove?: boolean;
  /** names of the rows of a strip chart, from the top, in the place of numbers on the y axis */
  readonly strips?: readonly Strip[];
  /** how long curves glide to a new place [ms] */
  readonly motion?: number;
}
