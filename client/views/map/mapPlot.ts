import { ticks } from "d3";
import { type ChanceNodes, chanceOver } from "../../../shared/decide/map/chance.ts";
import type { MapQuestion } from "../../../shared/decide/map/grid.ts";
import { buildAt, type MapKey, rotorAt } from "../../../shared/decide/map/place.ts";
import type { MapField } from "../../../shared/decide/map/solve.ts";
import { answerOrNull } from "../../../shared/numeric/errors.ts";
import { predictAny } from "../../../shared/physics/predictAny.ts";
import { formatFixed, formatShort, inUnit, THIN_SPACE } from "../../../shared/units/format.ts";
import { unitOf } from "../../../shared/units/showing.ts";
import { decimalsShown, shownNumber, unitShown } from "../../../shared/units/shown.ts";
import { contoursOf } from "../../charts/draw/contours.ts";
import type { DrawnField } from "../../charts/model/field.ts";
import type { Axis, Mark, Plot, Point, Ring, Stop } from "../../charts/model/plot.ts";
import type { Table } from "../../ui/table.ts";
import type { Shown } from "./asked.ts";
import { namesOf, regionsOf } from "./regions.ts";
import { settingBy } from "./settings.ts";

/** Places at which the map is read, and rows of its table, along each axis. */
const [READ, LISTED] = [17, 9];

/** Where contour lines of each field run, in the unit shown. */
const STEPS = {
  margin: [0.5, 1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 15, 20],
  minutes: [1, 2, 3, 4, 5, 6, 8, 10, 15, 20, 30, 45, 60],
  chance: [5, 25, 50, 75, 95, 99],
} as const;
/** Of a share, in per cent. */
const PERCENT = 100;
/** Lines of contours that a map has at most, spread over its values. */
const MOST_STEPS = 9;

/** A build or a part of the book that lies on the map. */
export interface OnMap {
  readonly key: string;
  readonly name: string;
  /** SI, by axis */
  readonly x: number;
  readonly y: number;
}

/** All that a map is drawn from. */
export interface Drawing {
  readonly question: MapQuestion;
  readonly field: MapField;
  readonly shown: Shown;
  /** the spread of the margin, where the chance of holding is shown */
  readonly chance: ChanceNodes | null;
  /** where the build stands, and where it is moved to, SI */
  readonly own: { readonly x: number; readonly y: number };
  readonly moved: { readonly x: number; readonly y: number };
  readonly others: readonly OnMap[];
}

/** @returns a value of a setting in the unit of its axis */
export function shownOf(key: MapKey, si: number): number {
  return shownNumber(settingBy(key), si);
}

/** @returns a value of a setting as it is said: "44.0 mm" */
export function settingText(key: MapKey, si: number): string {
  const setting = settingBy(key);
  const unit = unitShown(setting);
  const number = formatFixed(shownOf(key, si), decimalsShown(setting, setting.decimals));
  return unit ? `${number}${THIN_SPACE}${unit}` : number;
}

function axisOf({ key, values }: MapQuestion["x"]): Axis {
  const { label } = settingBy(key);
  const unit = unitShown(settingBy(key));
  return {
    label: `${label.charAt(0).toLowerCase()}${label.slice(1)}${unit ? `, ${unit}` : ""}`,
    from: shownOf(key, values[0]),
    to: shownOf(key, values[values.length - 1]),
  };
}

/** @returns what is shown, in its unit: ×, minutes, °C, % */
export function valuesOf({ question, field, shown, chance }: Drawing): Float64Array {
  if (shown === "chance" && chance)
    return chanceOver(question, field, chance).map((share) => PERCENT * share);
  if (shown === "margin" || shown === "chance") return field.margin;
  if (shown === "minutes") return field.time.map((time) => inUnit(time, "duration"));
  return field.winding.map((kelvin) => inUnit(kelvin, "temperature"));
}

const unitOfShown = (shown: Shown): string => {
  if (shown === "chance") return "%";
  return shown === "margin" ? "×" : unitOf(shown === "minutes" ? "duration" : "temperature");
};
export const SHOWN_NAMES: Readonly<Record<Shown, string>> = {
  margin: "margin",
  minutes: "minutes to the end of the charge",
  winding: "winding temperature",
  chance: "chance of holding",
};

/** @returns a value of the field in words */
export function valueText(shown: Shown, value: number): string {
  if (Number.isNaN(value)) return "no answer";
  if (value === Number.POSITIVE_INFINITY) return "no pull needed";
  const digits = shown === "margin" ? 2 : shown === "minutes" ? 1 : 0;
  return `${formatFixed(value, digits)}${THIN_SPACE}${unitOfShown(shown)}`;
}

function stepsOf(values: Float64Array, shown: Shown): number[] {
  const finite = values.filter((value) => Number.isFinite(value));
  const [least, most] = [
    finite.reduce((a, b) => Math.min(a, b), Infinity),
    finite.reduce((a, b) => Math.max(a, b), -Infinity),
  ];
  const all: readonly number[] = shown === "winding" ? ticks(least, most, MOST_STEPS) : STEPS[shown];
  const within = all.filter((step) => step > least && step < most);
  const every = Math.ceil(within.length / MOST_STEPS);
  return within.filter((step, i) => i % every === 0 || (shown === "margin" && step === 1));
}

function fieldOf(drawing: Drawing, x: Axis, y: Axis): DrawnField {
  const { question, shown } = drawing;
  const values = valuesOf(drawing);
  return {
    key: shown,
    x: [x.from, x.to],
    y: [y.from, y.to],
    columns: question.x.values.length,
    rows: question.y.values.length,
    values,
    steps: stepsOf(values, shown),
    words: (step) => `${formatShort(step, 2)}${THIN_SPACE}${unitOfShown(shown)}`,
    contoursOf,
  };
}

const placed = ({ question }: Drawing, { x, y }: { readonly x: number; readonly y: number }): Point => ({
  x: shownOf(question.x.key, x),
  y: shownOf(question.y.key, y),
});

const within = ({ values }: MapQuestion["x"], value: number) =>
  value >= values[0] && value <= values[values.length - 1];

function ringsOf(drawing: Drawing): Ring[] {
  const { question, own, moved } = drawing;
  const inside = ({ x, y }: { readonly x: number; readonly y: number }) =>
    within(question.x, x) && within(question.y, y);
  const apart = moved.x !== own.x || moved.y !== own.y;
  return [
    ...(apart && inside(own)
      ? [{ key: "own", look: "before", ...placed(drawing, own), name: { lines: ["as stored"] } } as const]
      : []),
    ...(inside(moved)
      ? [
          {
            key: "moved",
            look: "predicted",
            ...placed(drawing, moved),
            name: { lines: ["this build"] },
          } as const,
        ]
      : []),
  ];
}

function marksOf(drawing: Drawing): Mark[] {
  const { others, question } = drawing;
  const inside = others.filter(({ x, y }) => within(question.x, x) && within(question.y, y));
  return inside.map((each) => ({
    key: `other ${each.key}`,
    ...placed(drawing, each),
    shape: 0,
    tone: "needed",
    aside: false,
    outlier: false,
  }));
}

/** @returns so many of an axis's places, both ends among them */
export function spreadOver(count: number, most: number): number[] {
  const n = Math.min(count, most);
  return [
    ...new Set(Array.from({ length: n }, (_, i) => Math.round((i * (count - 1)) / Math.max(1, n - 1)))),
  ];
}

function stopsOf({ question: { x, y } }: Drawing): Stop[] {
  return spreadOver(y.values.length, READ).flatMap((row) =>
    spreadOver(x.values.length, READ).map((column) => ({
      key: `at ${column} ${row}`,
      x: shownOf(x.key, x.values[column]),
      y: shownOf(y.key, y.values[row]),
    })),
  );
}

/** @returns the map as a chart: the field with its contour lines, what stops the build, its own place and others */
export function mapPlot(drawing: Drawing): Plot {
  const { question, field } = drawing;
  const [x, y] = [axisOf(question.x), axisOf(question.y)];
  const at = (column: number, row: number): Point => ({
    x: x.from + ((x.to - x.from) * column) / (question.x.values.length - 1),
    y: y.from + ((y.to - y.from) * row) / (question.y.values.length - 1),
  });
  const marks = marksOf(drawing);
  return {
    x,
    y,
    field: fieldOf(drawing, x, y),
    regions: [...regionsOf(field, question, at), ...namesOf(field, question, at)],
    rings: ringsOf(drawing),
    marks,
    shapes: marks.length > 0 ? [{ key: "others", shape: 0, text: "other builds and parts of the book" }] : [],
    stops: stopsOf(drawing),
  };
}

/** @returns place of a key of the chart on the map, SI; null where it is none */
export function placeOf({ question: { x, y }, others, own, moved }: Drawing, key: string) {
  const [, column, row] = /^at (\d+) (\d+)$/.exec(key) ?? [];
  if (column !== undefined) return { x: x.values[Number(column)], y: y.values[Number(row)] };
  if (key === "own") return own;
  if (key === "moved") return moved;
  return others.find((each) => `other ${each.key}` === key) ?? null;
}

function nearestAt(values: readonly number[], value: number): number {
  return values.reduce(
    (best, each, i) => (Math.abs(each - value) < Math.abs(values[best] - value) ? i : best),
    0,
  );
}

/** @returns what the build has at any place, solved there: margin [-] and where it is least [°], null where it isn't solved; winding [K], burst over speed [-]; time of the cell next to it [s] */
export function solvedAt(drawing: Pick<Drawing, "question" | "field">, x: number, y: number) {
  const { of, x: across, y: upwards } = drawing.question;
  const near = cellAt(drawing, x, y);
  const input = buildAt(of, { [across.key]: x, [upwards.key]: y });
  const solved = answerOrNull(() => predictAny(input, []));
  if (!solved?.point) return { ...near, least: null };
  const { worst, point } = solved;
  const [parked, driving] = [worst.parked.margin ?? Infinity, worst.driving.margin ?? Infinity];
  const state = driving < parked ? ("driving" as const) : ("parked" as const);
  const burst = (rotorAt(of, input.rotor.diameter).burstSpeed ?? Number.NaN) / point.speed;
  const least = { state, angle: worst[state].angle };
  return { ...near, margin: Math.min(parked, driving), winding: point.windingTemperature, burst, least };
}

/** What the map has in the cell next to a place. */
function cellAt({ question, field }: Pick<Drawing, "question" | "field">, x: number, y: number) {
  const cell = nearestAt(question.y.values, y) * question.x.values.length + nearestAt(question.x.values, x);
  return {
    margin: field.margin[cell],
    winding: field.winding[cell],
    time: field.time[cell],
    burst: field.burst[cell],
  };
}

/** @returns the map as a table, nine places along each axis */
export function mapTable(drawing: Drawing): Table {
  const { question, shown } = drawing;
  const { x, y } = question;
  const values = valuesOf(drawing);
  const columns = spreadOver(x.values.length, LISTED);
  // A chance that was sampled has no digits behind the whole per cent.
  const digits = (value: number) => (shown === "chance" ? Math.round(value) : value);
  const number = (value: number) => (Number.isFinite(value) ? digits(value) : null);
  return {
    columns: [
      `${settingBy(y.key).label} ↓, ${settingBy(x.key).label} →; ${SHOWN_NAMES[shown]} (${unitOfShown(shown)})`,
      ...columns.map((column) => settingText(x.key, x.values[column])),
    ],
    rows: spreadOver(y.values.length, LISTED).map((row) => [
      settingText(y.key, y.values[row]),
      ...columns.map((column) => number(values[row * x.values.length + column])),
    ]),
  };
}
