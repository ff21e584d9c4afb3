import { type Drift, fitDrift } from "../../../../shared/fit/pullDrift.ts";
import { answerOrNull } from "../../../../shared/numeric/errors.ts";
import { inUnit } from "../../../../shared/units/format.ts";
import { headed } from "../../../../shared/units/showing.ts";
import { bracketsOf, type Strength, type StrengthTrial, strengthOf } from "../strength/strength.ts";
import type { PullPage, PullPoint } from "./pullData.ts";

/** A pull that has a prediction to be held against. */
export type Compared = PullPoint & { readonly predicted: number };

/** Pulls brought to one charge through the model: each measured pull times reference over its own prediction. */
export interface ReducedPulls {
  readonly points: readonly Compared[];
  /** predicted pull that they are brought to: the middle one of those that count [N] */
  readonly reference: number;
  /** voltage at which it is predicted; null where none was read [V] */
  readonly voltage: number | null;
  /** of ln(measured/predicted) */
  readonly strength: Strength;
  /** pulls that a trend is looked for in */
  readonly counted: number;
  /** null where too few pulls say it */
  readonly againstVoltage: Drift | null;
  readonly againstOrder: Drift | null;
}

const PERCENT = 100;

function trialOf({ key, testId, row, test, aside, held, letGo, predicted }: Compared): StrengthTrial {
  return {
    key,
    testId,
    row,
    test,
    aside: aside !== null,
    low: held > 0 ? Math.log(held / predicted) : Number.NEGATIVE_INFINITY,
    high: letGo === null ? Number.POSITIVE_INFINITY : Math.log(letGo / predicted),
  };
}

const informative = ({ aside, held, letGo }: PullPoint) => aside === null && (held > 0 || letGo !== null);

function driftOf(points: readonly Compared[], against: readonly number[]): Drift | null {
  return answerOrNull(() => fitDrift(bracketsOf(points.map(trialOf)), against));
}

const known = new WeakMap<PullPage, ReducedPulls | null>();

/** @returns the pulls of a page brought to one charge, made once a page; null where none has a prediction */
export function reducedPulls(page: PullPage): ReducedPulls | null {
  const made = known.get(page);
  if (made !== undefined) return made;
  const pulls = reduce(page);
  known.set(page, pulls);
  return pulls;
}

function reduce(page: PullPage): ReducedPulls | null {
  const points = page.points.filter(
    (point): point is Compared => point.predicted !== null && point.predicted > 0 && point.letGo !== 0,
  );
  const counted = points.filter(informative);
  if (counted.length === 0) return null;
  const middle = [...counted].sort((a, b) => a.predicted - b.predicted)[Math.floor(counted.length / 2)];
  const reference = middle.predicted;
  const read = counted.flatMap((point) => (point.voltage === null ? [] : [{ point, volts: point.voltage }]));
  const strength = strengthOf({
    trials: points.map(trialOf),
    shown: (log) => inUnit(reference * Math.exp(log), "load"),
    off: (log, mean) => PERCENT * (Math.exp(log - mean) - 1),
    words: {
      one: "pull",
      step: "load",
      ends: "let go",
      axis: headed("pull at one charge", "load"),
      offAxis: "off the median, %",
      event: "let go, %",
      figure: "the median",
    },
  });
  return {
    points,
    reference,
    voltage: middle.voltage,
    strength,
    counted: counted.length,
    againstVoltage: driftOf(
      read.map(({ point }) => point),
      read.map(({ volts }) => volts),
    ),
    againstOrder: driftOf(
      counted,
      counted.map((_, i) => i),
    ),
  };
}
