import { inUnit } from "../../../../shared/units/format.ts";
import { headed } from "../../../../shared/units/showing.ts";
import type { Axis, Band, Bracket, Line, Mark, Plot } from "../../../charts/model/plot.ts";
import type { CalibrationPage, LeakReading, PullReading } from "./calibrationData.ts";
import { OUTSIDE } from "./calibrationSentence.ts";

const ROOM = 0.1;
const CALIBRATED = 0;
const AS_SET = 1;

const grams = (load: number) => inUnit(load, "load");
const litres = (flow: number) => inUnit(flow, "flow");

/** One span for both axes, so that the line on which they agree is the diagonal. */
function span(values: readonly number[]): { from: number; to: number } {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const room = Math.max((high - low) * ROOM, high * ROOM * ROOM);
  return { from: Math.max(0, low - room), to: high + room };
}

function oneToOne({ from, to }: Pick<Axis, "from" | "to">): Line {
  const points = [from, to].map((at) => ({ x: at, y: at }));
  return { key: "one", tone: "quiet", style: "dots", points, label: "as predicted" };
}

/** Twice the scatter of a single pull about the prediction: what lies beyond is outside. */
function scatterBand({ from, to }: Pick<Axis, "from" | "to">, scatter: number, tone: Band["tone"]): Band {
  const points = [from, to].map((x) => ({
    x,
    lo: x * (1 - OUTSIDE * scatter),
    hi: x * (1 + OUTSIDE * scatter),
  }));
  return { key: "scatter", tone, strength: "mean", points };
}

function bracketOf(pull: PullReading, at: number, asSet: boolean): Bracket {
  const { key, held, letGo } = pull;
  return {
    key: asSet ? `${key}-set` : key,
    along: "y",
    at: grams(at),
    lo: grams(held),
    hi: letGo === null ? null : grams(letGo),
    tone: asSet ? "quiet" : "rotor",
    aside: asSet,
  };
}

/** Brackets of the pulls against what is predicted as calibrated and, dashed, before the tests. */
export function calibratedPullPlot({ pulls, answer }: CalibrationPage): Plot {
  const brackets = [
    ...pulls.map((pull) => bracketOf(pull, pull.before, true)),
    ...pulls.map((pull) => bracketOf(pull, pull.predicted, false)),
  ];
  const axis = span(brackets.flatMap(({ at, lo, hi }) => [at, lo, hi ?? lo]));
  return {
    x: { label: headed("predicted pull", "load"), ...axis },
    y: { label: headed("pull that held and that let go", "load"), ...axis },
    bands: answer.scatter === null ? [] : [scatterBand(axis, answer.scatter, "rotor")],
    lines: [oneToOne(axis)],
    brackets,
  };
}

function markOf(leak: LeakReading, predicted: number, shape: number): Mark {
  const { key, measured } = leak;
  const [x, y] = [litres(predicted), litres(measured)];
  const asSet = shape === AS_SET;
  return {
    key: asSet ? `${key}-set` : key,
    x,
    y,
    shape,
    tone: asSet ? "quiet" : "leak",
    aside: false,
    outlier: false,
  };
}

/** Flows of the leak readings against what the lip law gives with the gap calibrated and as set. */
export function calibratedLeakPlot({ leaks }: CalibrationPage): Plot {
  const marks = [
    ...leaks.map((leak) => markOf(leak, leak.predicted, CALIBRATED)),
    ...leaks.map((leak) => markOf(leak, leak.before, AS_SET)),
  ];
  const axis = span(marks.flatMap(({ x, y }) => [x, y]));
  return {
    x: { label: headed("predicted flow", "flow"), ...axis },
    y: { label: headed("measured flow", "flow"), ...axis },
    lines: [oneToOne(axis)],
    marks,
    shapes: [
      { key: "calibrated", shape: CALIBRATED, text: "gap calibrated" },
      { key: "set", shape: AS_SET, text: "gap as set" },
    ],
  };
}
