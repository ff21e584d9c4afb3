import { leakBands } from "../../../../shared/fit/leakBands.ts";
import { formatQuantity, inUnit } from "../../../../shared/units/format.ts";
import { headed } from "../../../../shared/units/showing.ts";
import { axisOver, logAxisOver } from "../../../charts/model/axis.ts";
import type { Band, Line, Mark, Plot } from "../../../charts/model/plot.ts";
import { type LeakGroup, type LeakPage, type LeakPoint, lipFlow } from "./leakData.ts";

const STEPS = 40;
/** How far the lines run past the readings, as a ratio of pressures. */
const BEYOND = 1.6;
const PERCENT = 100;

const flowShown = (flow: number) => inUnit(flow, "flow");
const pressureShown = (pressure: number) => inUnit(pressure, "pressure");

/** @returns what a group is called: its surface (or skirt) and its gap */
export function groupTitle(group: LeakGroup, part: "skirt" | "surface"): string {
  const other = part === "skirt" ? group.surface.data.name : group.skirt.data.name;
  return `${other}, ${formatQuantity(group.gap, "length", { decimals: 2 })}`;
}

function pressuresOf(points: readonly LeakPoint[]): { least: number; most: number } {
  const all = points.map((point) => point.pressure).filter((pressure) => pressure > 0);
  return { least: Math.min(...all), most: Math.max(...all) };
}

function along(from: number, to: number, flow: (pressure: number) => number): Line["points"] {
  return pressuresAlong(from, to).map((pressure) => ({
    x: pressureShown(pressure),
    y: flowShown(flow(pressure)),
  }));
}

function linesOf(group: LeakGroup, title: string): Line[] {
  const { least, most } = pressuresOf(group.points);
  if (!(most >= least)) return [];
  const { key, fit } = group;
  const lip: Line = {
    key: `${key} lip`,
    tone: "needed",
    style: "dots",
    points: along(least / BEYOND, most * BEYOND, (pressure) => lipFlow(group, pressure)),
    label: "lip gap, computed",
  };
  if (!fit) return [lip];
  const law = (pressure: number) => fit.coefficient * pressure ** fit.exponent;
  const draw = (part: string, style: Line["style"], from: number, to: number, label?: string): Line => ({
    key: `${key} ${part}`,
    tone: "leak",
    style,
    points: along(from, to, law),
    label,
  });
  const [lo, hi] = fit.pressureRange;
  return [
    lip,
    draw("below", "dashed", lo / BEYOND, lo),
    draw("tested", "solid", lo, hi),
    draw("beyond", "dashed", hi, hi * BEYOND, title),
  ];
}

const pressuresAlong = (from: number, to: number) =>
  Array.from({ length: STEPS + 1 }, (_, i) => from * (to / from) ** (i / STEPS));

/** The law's 95 % bands; `shown` turns a flow at a pressure into what the y axis holds. */
function bandsOf(group: LeakGroup, shown: (flow: number, law: number) => number): Band[] {
  const { key, fit } = group;
  if (!fit || fit.covariance === null) return [];
  const [lo, hi] = fit.pressureRange;
  return (["prediction", "mean"] as const).map((strength) => ({
    key: `${key} ${strength}`,
    tone: "leak",
    strength,
    points: pressuresAlong(lo / BEYOND, hi * BEYOND).map((pressure) => {
      const bands = leakBands(fit, pressure);
      const { low, high } = bands?.[strength] ?? { low: Number.NaN, high: Number.NaN };
      const law = bands?.flow ?? Number.NaN;
      return { x: pressureShown(pressure), lo: shown(low, law), hi: shown(high, law) };
    }),
  }));
}

function markOf(point: LeakPoint, y: number): Mark {
  const { key, test, pressure, aside } = point;
  return {
    key,
    x: pressureShown(pressure),
    y,
    shape: test,
    tone: "leak",
    aside: aside !== null,
    outlier: false,
  };
}

const shapesOf = (page: LeakPage) =>
  page.tests.map((test, shape) => ({ key: test.id, shape, text: test.title }));

/** Leak readings on double logarithmic axes, where the law is a straight line, with the lip-gap law's own prediction. */
export function leakPlot(page: LeakPage, part: "skirt" | "surface"): Plot {
  const points = page.groups
    .flatMap((group) => group.points)
    .filter((each) => each.pressure > 0 && each.flow > 0);
  const lines = page.groups.flatMap((group) => linesOf(group, groupTitle(group, part)));
  const ys = [
    ...points.map((point) => flowShown(point.flow)),
    ...lines.flatMap((line) => line.points.map((p) => p.y)),
  ];
  const xs = points.map((point) => pressureShown(point.pressure));
  return {
    x: logAxisOver(headed("suction", "pressure"), [
      ...xs,
      ...lines.flatMap((line) => line.points.map((p) => p.x)),
    ]),
    y: logAxisOver(headed("flow", "flow"), ys),
    bands: page.groups.flatMap((group) => bandsOf(group, flowShown)),
    lines,
    marks: points.map((point) => markOf(point, flowShown(point.flow))),
    shapes: shapesOf(page),
  };
}

/** What the fitted laws miss each reading by, in percent of the flow. */
export function leakResidualPlot(page: LeakPage): Plot {
  const marks = page.groups.flatMap(({ points, fit }) =>
    points.flatMap((point) => {
      if (!fit || !(point.pressure > 0)) return [];
      const law = fit.coefficient * point.pressure ** fit.exponent;
      return [markOf(point, (point.flow / law - 1) * PERCENT)];
    }),
  );
  const most = Math.max(1, ...marks.filter((mark) => !mark.aside).map((mark) => Math.abs(mark.y)));
  return {
    x: logAxisOver(
      headed("suction", "pressure"),
      marks.flatMap((mark) => [mark.x / BEYOND, mark.x * BEYOND]),
    ),
    y: axisOver("residual, % of the flow", [-most, most]),
    bands: page.groups.length === 1 ? bandsOf(page.groups[0], (flow, law) => (flow / law - 1) * PERCENT) : [],
    levels: [{ key: "zero", along: "x", at: 0, tone: "quiet" }],
    marks,
    shapes: shapesOf(page),
    namedAbove: true,
  };
}
