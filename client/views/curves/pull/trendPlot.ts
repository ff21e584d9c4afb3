import { inUnit } from "../../../../shared/units/format.ts";
import { headed } from "../../../../shared/units/showing.ts";
import { axisOver } from "../../../charts/model/axis.ts";
import type { Band, Bracket, Line, Plot } from "../../../charts/model/plot.ts";
import type { Compared, ReducedPulls } from "./pullReduced.ts";

const grams = (load: number) => inUnit(load, "load");

/** Every pull's place along the chart: its voltage where all were read, else its place in the order. */
function placesOf({ points }: ReducedPulls): { label: string; at: (point: Compared, i: number) => number } {
  if (points.every((point) => point.voltage !== null))
    return { label: "voltage at the pack, V", at: (point) => point.voltage ?? 0 };
  return { label: "pull, in order", at: (_, i) => i + 1 };
}

function bracketsOf(
  pulls: ReducedPulls,
  scale: (point: Compared) => number,
): { brackets: Bracket[]; xs: number[]; label: string } {
  const { label, at } = placesOf(pulls);
  const brackets = pulls.points.map((point, i): Bracket => {
    const { key, held, letGo, aside } = point;
    const by = scale(point);
    return {
      key,
      along: "y",
      at: at(point, i),
      lo: grams(held * by),
      hi: letGo === null ? null : grams(letGo * by),
      tone: "rotor",
      aside: aside !== null,
    };
  });
  return { brackets, xs: brackets.map((bracket) => bracket.at), label };
}

/** As pulled: the brackets, and what the model predicts for each. */
export function pulledPlot(pulls: ReducedPulls): Plot {
  const { brackets, xs, label } = bracketsOf(pulls, () => 1);
  const { at } = placesOf(pulls);
  const predicted = pulls.points
    .map((point, i) => ({ x: at(point, i), y: grams(point.predicted) }))
    .sort((a, b) => a.x - b.x);
  const line: Line = {
    key: "predicted",
    tone: "quiet",
    style: "dots",
    points: predicted,
    label: "predicted",
  };
  return plotOf(brackets, xs, label, [line], []);
}

/** Brought to one charge: the same brackets over their predictions, the median and its interval. */
export function reducedPlot(pulls: ReducedPulls): Plot {
  const { brackets, xs, label } = bracketsOf(pulls, (point) => pulls.reference / point.predicted);
  const { fit, shown } = pulls.strength;
  const ends = [Math.min(...xs), Math.max(...xs)];
  const lines: Line[] = fit
    ? [
        {
          key: "median",
          tone: "rotor",
          style: "solid",
          points: ends.map((x) => ({ x, y: shown(fit.mean) })),
          label: "median",
        },
      ]
    : [];
  const interval = fit?.meanInterval;
  const bands: Band[] = interval
    ? [
        {
          key: "median",
          tone: "rotor",
          strength: "mean",
          points: ends.map((x) => ({ x, lo: shown(interval[0]), hi: shown(interval[1]) })),
        },
      ]
    : [];
  return plotOf(brackets, xs, label, lines, bands);
}

function plotOf(
  brackets: readonly Bracket[],
  xs: readonly number[],
  label: string,
  lines: readonly Line[],
  bands: readonly Band[],
): Plot {
  const ys = [
    ...brackets.flatMap(({ lo, hi }) => [lo, hi ?? lo]),
    ...lines.flatMap((line) => line.points.map(({ y }) => y)),
  ];
  return { x: axisOver(label, xs), y: axisOver(headed("pull", "load"), ys), brackets, lines, bands };
}
