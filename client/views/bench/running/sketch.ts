import { decimalsFor, formatFixed } from "../../../../shared/units/format.ts";
import { axisOver } from "../../../charts/model/axis.ts";
import type { Bracket, Level, Line, Plot } from "../../../charts/model/plot.ts";
import type { Table } from "../../../ui/table.ts";

/** The readings of a form, drawn as they are typed. */
export interface Sketch {
  /** what is drawn over what: "suction over flow" */
  readonly title: string;
  readonly plot: Plot;
  readonly table: () => Table;
  /** what a reading says of itself, by its key, the row's own */
  readonly describe: (key: string) => readonly string[];
}

/** One reading as a point, in the units of the axes. */
export interface SketchPoint {
  /** the row's key in the form */
  readonly key: number;
  /** its place in the form, from 1 */
  readonly number: number;
  readonly x: number;
  readonly y: number;
  /** why it is left out of the fit; null while it counts */
  readonly aside: string | null;
  readonly outlier?: boolean;
}

/** One reading known to lie between two bounds, in the unit of the axis. */
export interface SketchBracket extends Pick<SketchPoint, "key" | "number" | "aside"> {
  /** null where nothing held */
  readonly lo: number | null;
  /** null where it was stopped before */
  readonly hi: number | null;
}

/** Digits of a reading in the tooltip; an instrument of a bench has no more. */
const DIGITS = 4;
const text = (value: number) => formatFixed(value, decimalsFor(value, DIGITS));
const withUnit = (value: number, label: string) => {
  const unit = label.split(", ").at(-1) ?? "";
  return `${text(value)}\u202f${unit}`;
};

export interface PointSketch {
  readonly title: string;
  /** of a row: "point" */
  readonly row: string;
  /** "flow, L/s" */
  readonly x: string;
  readonly y: string;
  readonly points: readonly SketchPoint[];
  /** the fit so far */
  readonly lines?: readonly Line[];
}

const asideText = (aside: string | null) => (aside ? [`set aside: ${aside}`] : []);

/** @returns readings as points, with the line fitted to them; null while there are none */
export function pointSketch({ title, row, x, y, points, lines = [] }: PointSketch): Sketch | null {
  const drawn = points.filter((point) => Number.isFinite(point.x) && Number.isFinite(point.y));
  if (drawn.length === 0) return null;
  const byKey = new Map(drawn.map((point) => [String(point.key), point]));
  const all = [...drawn, ...lines.flatMap((line) => line.points)];
  return {
    title,
    plot: {
      x: axisOver(
        x,
        all.map((point) => point.x),
      ),
      y: axisOver(
        y,
        all.map((point) => point.y),
      ),
      lines,
      marks: drawn.map((point) => ({
        key: String(point.key),
        x: point.x,
        y: point.y,
        shape: 0,
        tone: "rotor",
        aside: point.aside !== null,
        outlier: point.outlier === true,
      })),
    },
    table: () => ({
      columns: [row, x, y, "set aside"],
      rows: drawn.map((point) => [point.number, point.x, point.y, point.aside ?? ""]),
    }),
    describe: (key) => {
      const point = byKey.get(key);
      if (!point) return [];
      const readings = `${withUnit(point.x, x)}, ${withUnit(point.y, y)}`;
      return [`${row} ${point.number}`, readings, ...asideText(point.aside)];
    },
  };
}

/** So many brackets are named by their row's number; more stand in a row over their order. */
const NAMED = 12;

export interface BracketSketch {
  readonly title: string;
  readonly row: string;
  /** "pull, g" */
  readonly value: string;
  readonly held: string;
  readonly letGo: string;
  readonly brackets: readonly SketchBracket[];
  /** drawn as dots; the title says what of */
  readonly levels?: readonly { readonly key: string; readonly at: number }[];
}

/** @returns what held and what let go as brackets, row by row; null while there are none */
export function bracketSketch(sketch: BracketSketch): Sketch | null {
  const { title, row, value, held, letGo, brackets } = sketch;
  if (brackets.length === 0) return null;
  const byKey = new Map(brackets.map((bracket) => [String(bracket.key), bracket]));
  return {
    title,
    plot: brackets.length > NAMED ? inARow(sketch) : named(sketch),
    table: () => ({
      columns: [row, `${held}, ${unitOf(value)}`, `${letGo}, ${unitOf(value)}`, "set aside"],
      rows: brackets.map(({ number, lo, hi, aside }) => [number, lo, hi, aside ?? ""]),
    }),
    describe: (key) => {
      const bracket = byKey.get(key);
      if (!bracket) return [];
      const { lo, hi, number, aside } = bracket;
      const ends = [
        lo === null ? "" : `${held} ${withUnit(lo, value)}`,
        hi === null ? "" : `${letGo} ${withUnit(hi, value)}`,
      ];
      return [`${row} ${number}`, ends.filter(Boolean).join(", "), ...asideText(aside)];
    },
  };
}

const unitOf = (label: string) => label.split(", ").at(-1) ?? "";

/** Brackets by their order across the chart, or by their number along it; where only the upper end was read, a mark. */
function layersOf({ brackets }: BracketSketch, along: Bracket["along"]) {
  return {
    brackets: brackets.flatMap(({ key, lo, hi, aside, ...row }, i): Bracket[] => {
      const at = along === "x" ? i : row.number;
      const looks = { tone: "rotor", aside: aside !== null } as const;
      return lo === null ? [] : [{ key: String(key), along, at, lo, hi, ...looks }];
    }),
    marks: brackets.flatMap(({ key, lo, hi, aside, ...row }, i) => {
      if (lo !== null || hi === null) return [];
      const place = along === "x" ? { x: hi, y: i } : { x: row.number, y: hi };
      const looks = { shape: 0, tone: "rotor", aside: aside !== null, outlier: false } as const;
      return [{ key: String(key), ...place, ...looks }];
    }),
  };
}

const valuesOf = ({ brackets, levels = [] }: BracketSketch) => [
  ...brackets.flatMap(({ lo, hi }) => [lo, hi].filter((end) => end !== null)),
  ...levels.map(({ at }) => at),
];

const levelsOf = ({ levels = [] }: BracketSketch, along: Level["along"]): Level[] =>
  levels.map((level) => ({ ...level, along, tone: "needed", style: "dots" }));

function named(sketch: BracketSketch): Plot {
  const { brackets, marks } = layersOf(sketch, "x");
  return {
    x: axisOver(sketch.value, valuesOf(sketch)),
    y: { label: "", from: sketch.brackets.length - 0.5, to: -0.5 },
    strips: sketch.brackets.map(({ number }) => ({ title: "", detail: String(number) })),
    brackets,
    marks,
    levels: levelsOf(sketch, "y"),
  };
}

function inARow(sketch: BracketSketch): Plot {
  const numbers = sketch.brackets.map(({ number }) => number);
  const { brackets, marks } = layersOf(sketch, "y");
  return {
    x: axisOver(`${sketch.row}, in order`, numbers),
    y: axisOver(sketch.value, valuesOf(sketch)),
    brackets,
    marks,
    levels: levelsOf(sketch, "x"),
  };
}
