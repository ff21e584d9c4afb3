/** A quantity over a part of the plot, on a grid that is even along both axes, with contour lines. */
export interface Field {
  readonly key: string;
  /** from the first column or row to the last, in the axes' units */
  readonly x: readonly [from: number, to: number];
  readonly y: readonly [from: number, to: number];
  readonly columns: number;
  readonly rows: number;
  /** row by row, from the first y upwards; not finite: unknown there */
  readonly values: ArrayLike<number>;
  /** where contour lines run, rising; the tint grows with each */
  readonly steps: readonly number[];
  /** how a contour line is named */
  readonly words: (step: number) => string;
}

/** A closed line [px]. */
export type ContourRing = readonly (readonly [x: number, y: number])[];

/** Where a quantity is above one of its steps. */
export interface Contour {
  readonly step: number;
  /** as its line is named */
  readonly words: string;
  /** closed outlines in the plot, holes among them [px] */
  readonly rings: readonly ContourRing[];
}

/** A field as a chart draws it; how its contour lines are found comes with it, so that charts without one need not know. */
export interface DrawnField extends Field {
  readonly contoursOf: (
    field: Field,
    at: (x: number, y: number) => readonly [x: number, y: number],
  ) => readonly Contour[];
}
