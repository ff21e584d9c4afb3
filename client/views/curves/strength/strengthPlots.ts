import { strengthAt } from "../../../../shared/fit/strengthBands.ts";
import { axisOver } from "../../../charts/model/axis.ts";
import type { Band, Bracket, Line, Plot } from "../../../charts/model/plot.ts";
import { bracketsOf, type Strength, type StrengthTrial } from "./strength.ts";

const STEPS = 28;
const PERCENT = 100;
/** How far the curve runs past the bounds, in standard deviations and as a share of their span. */
const BEYOND_SDS = 2.5;
const BEYOND = 0.25;

const finite = (values: readonly number[]) => values.filter(Number.isFinite);

function rangeOf({ trials, fit }: Strength): [number, number] {
  const bounds = finite(trials.flatMap(({ low, high }) => [low, high]));
  const [least, most] = [Math.min(...bounds), Math.max(...bounds)];
  const room = BEYOND * (most - least || Math.abs(most) || 1);
  if (!fit) return [least - room, most + room];
  const reach = BEYOND_SDS * fit.sd;
  return [Math.min(least - room, fit.mean - reach), Math.max(most + room, fit.mean + reach)];
}

interface Along {
  readonly lines: Line[];
  readonly bands: Band[];
}

function distributionAlong(strength: Strength, [from, to]: [number, number]): Along {
  const { fit, trials, shown } = strength;
  if (!fit) return { lines: [], bands: [] };
  const brackets = bracketsOf(trials);
  const along = Array.from({ length: STEPS + 1 }, (_, i) => {
    const at = from + ((to - from) * i) / STEPS;
    const { share, band } = strengthAt(brackets, fit, at);
    return { x: shown(at), y: PERCENT * share, lo: PERCENT * band.low, hi: PERCENT * band.high };
  });
  return {
    lines: [{ key: "fit", tone: "rotor", style: "solid", points: along }],
    bands: [{ key: "fit", tone: "rotor", strength: "mean", points: along }],
  };
}

/** By how much each held: trials from the weakest to the strongest, each at its place among them. */
function ranked(trials: readonly StrengthTrial[]): { trial: StrengthTrial; at: number }[] {
  const order = (a: number, b: number) => (a === b ? 0 : a < b ? -1 : 1);
  const used = trials
    .filter((trial) => !trial.aside)
    .sort((a, b) => order(a.low, b.low) || order(a.high, b.high));
  return used.map((trial, i) => ({ trial, at: (PERCENT * (i + 1 / 2)) / used.length }));
}

/** Share of trials that let go up to a load: the fitted distribution, its 95 % band, and the brackets it rests on. */
export function distributionPlot(strength: Strength): Plot {
  const { shown, words, trials } = strength;
  const range = rangeOf(strength);
  const { lines, bands } = distributionAlong(strength, range);
  const [from, to] = range.map(shown);
  const brackets = ranked(trials).map(({ trial, at }): Bracket => {
    const { key, low, high } = trial;
    const lo = Number.isFinite(low) ? shown(low) : Math.max(0, from);
    const hi = Number.isFinite(high) ? shown(high) : null;
    return { key, along: "x", at, lo, hi, tone: "leak", aside: false };
  });
  return {
    x: { label: words.axis, from: Math.max(0, from), to },
    y: { label: words.event, from: 0, to: PERCENT },
    bands,
    lines,
    brackets,
  };
}

/** What each trial lies off the fit by, a strip a trial; the band is one standard deviation of single trials. */
export function strengthResidualPlot(strength: Strength): Plot {
  const { fit, trials, off, words } = strength;
  const mean = fit?.mean ?? 0;
  const sd = fit?.sd ?? 0;
  const at = (value: number) => off(value, mean);
  const ends = finite(trials.flatMap(({ low, high }) => [low, high])).map(at);
  const around = [at(mean - sd), at(mean + sd)];
  const axis = axisOver(words.offAxis, [...ends, ...around, 0]);
  const y = { label: "", from: trials.length - 0.5, to: -0.5 };
  const brackets = trials.map((trial, strip): Bracket => {
    const { key, low, high, aside } = trial;
    const lo = Number.isFinite(low) ? at(low) : axis.from;
    const hi = Number.isFinite(high) ? at(high) : null;
    return { key, along: "x", at: strip, lo, hi, tone: "rotor", aside };
  });
  return {
    x: axis,
    y,
    bands: fit
      ? [
          {
            key: "sd",
            tone: "rotor",
            strength: "mean",
            points: around.map((x) => ({ x, lo: y.from, hi: y.to })),
          },
        ]
      : [],
    levels: [{ key: "zero", along: "y", at: 0, tone: "quiet" }],
    brackets,
    strips: trials.map(({ aside }, i) => ({
      title: "",
      detail: `${words.one} ${i + 1}${aside ? ", aside" : ""}`,
    })),
  };
}
