import { openCircuitCurve } from "../../../../shared/physics/pack.ts";
import { inUnit } from "../../../../shared/units/format.ts";
import { headed } from "../../../../shared/units/showing.ts";
import { axisOver } from "../../../charts/model/axis.ts";
import type { Bracket, Line, Mark, Plot } from "../../../charts/model/plot.ts";
import { testName } from "../typed.ts";
import type { PackPage, PackPoint } from "./packData.ts";

const STEPS = 200;
const PERCENT = 100;
const MILLI = 1000;
/** Least half-span of the residuals' axis [mV]. */
const LEAST_SPAN = 1;

const CURVE_NAMES = { measured: "open-circuit", stated: "as stated", chemistry: "published" } as const;

function markOf(point: PackPoint, y: number): Mark {
  const { key, test, charge, aside } = point;
  return {
    key,
    x: charge * PERCENT,
    y,
    shape: test,
    tone: "rotor",
    aside: aside !== null,
    outlier: false,
  };
}

const shapesOf = (page: PackPage) =>
  page.tests.map((test, shape) => ({ key: test.id, shape, text: testName(test) }));

function curveLine({ basis }: PackPage): Line[] {
  if (basis.basis === "missing") return [];
  const curve = openCircuitCurve(basis.cell.curve);
  const points = Array.from({ length: STEPS + 1 }, (_, i) => {
    const charge = i / STEPS;
    return { x: charge * PERCENT, y: curve(charge) };
  });
  const style = basis.basis === "measured" ? "solid" : "dashed";
  return [{ key: "curve", tone: "rotor", style, points, label: CURVE_NAMES[basis.basis] }];
}

function minimumLine(voltage: number): Line {
  const points = [0, PERCENT].map((x) => ({ x, y: voltage }));
  return { key: "minimum", tone: "needed", style: "dots", points, label: "least under load" };
}

/** The sag of a loaded reading: from what was read up to the open circuit. */
function sags(points: readonly PackPoint[]): Bracket[] {
  return points
    .filter(({ current }) => current > 0)
    .map(({ key, charge, voltage, openCircuit, aside }) => ({
      key: `${key}-sag`,
      along: "y",
      at: charge * PERCENT,
      lo: voltage,
      hi: openCircuit,
      tone: "quiet",
      aside: aside !== null,
    }));
}

/** Voltage of one cell against its charge: readings with their sag taken out, the curve through them. */
export function packPlot(page: PackPage): Plot {
  const { minimumVoltage } = page.pack.data.cell;
  const lines = [...curveLine(page), minimumLine(minimumVoltage)];
  const voltages = [
    ...page.points.flatMap(({ voltage, openCircuit }) => [voltage, openCircuit]),
    ...lines.flatMap((each) => each.points.map(({ y }) => y)),
  ];
  return {
    x: axisOver("charge, %", [0, PERCENT], [0, PERCENT]),
    y: axisOver("voltage of a cell, V", voltages),
    lines,
    brackets: sags(page.points),
    marks: page.points.map((point) => markOf(point, point.openCircuit)),
    shapes: shapesOf(page),
  };
}

/** @returns the key of a stretch of the charge in its chart */
export const resistanceKey = ({ charge }: { readonly charge: number }): string => `resistance-${charge}`;

/** Resistance of one cell against its charge, each with its standard error; null where one stands for every charge. */
export function resistancePlot({ basis }: PackPage): Plot | null {
  const told = basis.basis === "missing" ? null : basis.fit?.resistanceByCharge;
  if (!told) return null;
  const shown = told.map(({ charge, resistance, standardError }) => ({
    key: resistanceKey({ charge }),
    x: charge * PERCENT,
    y: inUnit(resistance, "smallResistance"),
    off: inUnit(standardError, "smallResistance"),
  }));
  const [first, last] = [shown[0], shown[shown.length - 1]];
  const points = [{ x: 0, y: first.y }, ...shown.map(({ x, y }) => ({ x, y })), { x: PERCENT, y: last.y }];
  return {
    x: axisOver("charge, %", [0, PERCENT], [0, PERCENT]),
    y: axisOver(
      headed("resistance of a cell", "smallResistance"),
      shown.flatMap(({ y, off }) => [0, y + off]),
    ),
    lines: [{ key: "resistance", tone: "rotor", style: "solid", points, label: "in use" }],
    brackets: shown.map(({ key, x, y, off }) => ({
      key: `${key}-error`,
      along: "y",
      at: x,
      lo: y - off,
      hi: y + off,
      tone: "quiet",
      aside: false,
    })),
    marks: shown.map(({ key, x, y }) => ({
      key,
      x,
      y,
      shape: 0,
      tone: "rotor",
      aside: false,
      outlier: false,
    })),
  };
}

/** What curve and sag miss each reading by [mV]. */
export function packResidualPlot(page: PackPage): Plot {
  const marks = page.points.flatMap((point) =>
    point.residual === null ? [] : [markOf(point, point.residual * MILLI)],
  );
  const most = marks
    .filter(({ aside }) => !aside)
    .reduce((largest, { y }) => Math.max(largest, Math.abs(y)), LEAST_SPAN);
  return {
    x: axisOver("charge, %", [0, PERCENT], [0, PERCENT]),
    y: axisOver("residual, mV", [-most, most]),
    levels: [{ key: "zero", along: "x", at: 0, tone: "quiet" }],
    marks,
    shapes: shapesOf(page),
    namedAbove: true,
  };
}
