import { propellerBand } from "../../../../shared/fit/propellerBands.ts";
import { inUnit } from "../../../../shared/units/format.ts";
import { headed } from "../../../../shared/units/showing.ts";
import { axisOver, logAxisOver } from "../../../charts/model/axis.ts";
import type { Band, Line, Mark, Plot } from "../../../charts/model/plot.ts";
import { testName } from "../typed.ts";
import type { PropellerPage, PropellerReading, Which } from "./propellerData.ts";

const STEPS = 40;
/** The line is drawn so far beyond the tested Reynolds numbers, dashed. */
const BEYOND = 1.12;
const RE = "Reynolds number at 75 % of the radius";
const SYMBOL = { thrust: "thrust coefficient C_T", power: "power coefficient C_P" } as const;

function between(least: number, most: number): number[] {
  return Array.from({ length: STEPS + 1 }, (_, i) => least * (most / least) ** (i / STEPS));
}

function lineOver({ fit }: PropellerPage, which: Which, reynolds: readonly number[]) {
  return reynolds.flatMap((x) => {
    const found = fit && propellerBand(fit, which, x);
    return found ? [{ x, ...found }] : [];
  });
}

function linesOf(page: PropellerPage, which: Which): Line[] {
  if (!page.fit?.[which]) return [];
  const [least, most] = page.fit.testedReynolds;
  const line = (key: string, style: Line["style"], from: number, to: number, label?: string): Line => ({
    key,
    tone: "rotor",
    style,
    points: lineOver(page, which, between(from, to)).map(({ x, value }) => ({ x, y: value })),
    label,
  });
  return [
    line("slower", "dashed", least / BEYOND, least),
    line("tested", "solid", least, most, "fitted"),
    line("faster", "dashed", most, most * BEYOND),
  ];
}

function bandsOf(page: PropellerPage, which: Which): Band[] {
  if (!page.fit?.[which]) return [];
  const [least, most] = page.fit.testedReynolds;
  const points = lineOver(page, which, between(least, most)).flatMap(({ x, band }) =>
    band ? [{ x, lo: band.low, hi: band.high }] : [],
  );
  return points.length > 0 ? [{ key: "mean", tone: "rotor", strength: "mean", points }] : [];
}

function markOf(reading: PropellerReading, y: number): Mark {
  const { key, reynolds, test, aside } = reading;
  return {
    key,
    x: reynolds,
    y,
    shape: test,
    tone: "rotor",
    aside: aside !== null,
    outlier: false,
  };
}

const shapesOf = ({ tests }: PropellerPage) =>
  tests.map((test, shape) => ({ key: test.id, shape, text: testName(test) }));

function reynoldsAxis({ readings }: PropellerPage) {
  const all = readings.map((reading) => reading.reynolds);
  return logAxisOver(RE, [Math.min(...all) / BEYOND, Math.max(...all) * BEYOND]);
}

/** A coefficient against the Reynolds number: readings, line, band of the line. */
export function coefficientPlot(page: PropellerPage, which: Which): Plot {
  const marks = page.readings.flatMap((reading) => {
    const value = reading[which];
    return value === null ? [] : [markOf(reading, value)];
  });
  const lines = linesOf(page, which);
  const bands = bandsOf(page, which);
  const heights = [
    ...marks.filter((mark) => !mark.aside).map((mark) => mark.y),
    ...lines.flatMap((line) => line.points.map((point) => point.y)),
    ...bands.flatMap((band) => band.points.flatMap(({ lo, hi }) => [lo, hi])),
  ];
  return {
    x: reynoldsAxis(page),
    y: axisOver(SYMBOL[which], heights),
    bands,
    lines,
    marks,
    shapes: shapesOf(page),
  };
}

/** What the line misses each thrust by. */
export function thrustResidualPlot(page: PropellerPage): Plot {
  const marks = page.readings.flatMap((reading) =>
    reading.residual === null ? [] : [markOf(reading, inUnit(reading.residual, "load"))],
  );
  const most = Math.max(0.5, ...marks.filter((mark) => !mark.aside).map((mark) => Math.abs(mark.y)));
  return {
    x: reynoldsAxis(page),
    y: axisOver(headed("residual", "load"), [-most, most]),
    levels: [{ key: "zero", along: "x", at: 0, tone: "quiet" }],
    marks,
    shapes: shapesOf(page),
    namedAbove: true,
  };
}
