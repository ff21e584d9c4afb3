import { formatFixed, inUnit } from "../../../../shared/units/format.ts";
import { headed } from "../../../../shared/units/showing.ts";
import { axisOver } from "../../../charts/model/axis.ts";
import type { Line, Plot, Point } from "../../../charts/model/plot.ts";
import { massText } from "../massWords.ts";
import type { Moment } from "./course.ts";

/** Less than this is no change of mass [kg]. */
const LEAST_SAID = 5e-5;
const DAY = 86_400_000;

const daysSince = (first: string, at: string): number => (Date.parse(at) - Date.parse(first)) / DAY;

/** Each value stands until the next revision: a step, not a slope. */
function steps(moments: readonly Moment[], of: (moment: Moment) => number | null): Point[] {
  const [first] = moments;
  return moments.flatMap((moment, i) => {
    const value = of(moment);
    const y = value === null ? Number.NaN : inUnit(value, "mass");
    const next = moments[i + 1];
    const from = { x: daysSince(first.at, moment.at), y };
    return next ? [from, { x: daysSince(first.at, next.at), y }] : [from];
  });
}

/** @returns mass and limits against the days since the build was first stored */
export function coursePlot(moments: readonly Moment[]): Plot {
  const line = (
    key: string,
    more: Pick<Line, "tone" | "style" | "label">,
    of: (moment: Moment) => number | null,
  ): Line => ({
    key,
    ...more,
    points: steps(moments, of),
  });
  const lines = [
    line("target", { tone: "needed", style: "solid", label: "wanted margin" }, ({ atTarget }) => atTarget),
    line("one", { tone: "needed", style: "dashed", label: "just holds" }, ({ atOne }) => atOne),
    line("mass", { tone: "ink", style: "solid", label: "mass" }, ({ mass }) => mass),
  ];
  const points = lines.flatMap((each) => each.points);
  const days = moments.map(({ at }) => daysSince(moments[0].at, at));
  return {
    x: axisOver(`days since ${moments[0].at.slice(0, 10)}`, days, [0]),
    y: axisOver(
      headed("mass", "mass"),
      points.map(({ y }) => y),
      [0],
    ),
    lines,
    rings: moments.map(({ revision, mass }, i) => ({
      key: String(revision),
      x: days[i],
      y: inUnit(mass, "mass"),
      look: "predicted" as const,
    })),
  };
}

/** @returns what a revision says of itself, a line each */
export function momentLines(moments: readonly Moment[], key: string): string[] {
  const moment = moments.find(({ revision }) => String(revision) === key);
  if (!moment) return [];
  const { at, mass, atTarget, margin, attitude } = moment;
  return [
    at.slice(0, 16).replace("T", " "),
    `${massText(mass)} on board`,
    ...(atTarget === null ? [] : [`${massText(atTarget)} allowed for ${attitude}`]),
    ...(margin === null ? [] : [`${formatFixed(margin, 2)}\u202f× at worst`]),
  ];
}

/** @returns how the mass went, in one sentence */
export function courseSentence(moments: readonly Moment[]): string {
  const [first, last] = [moments[0], moments[moments.length - 1]];
  const grown = last.mass - first.mass;
  const changed = grown >= 0 ? `grew by ${massText(grown)}` : `lost ${massText(-grown)}`;
  const way = Math.abs(grown) < LEAST_SAID ? "kept its mass" : changed;
  const left = (moment: Moment) => (moment.atTarget === null ? null : moment.atTarget - moment.mass);
  const [before, now] = [left(first), left(last)];
  const room = (grams: number) => (grams >= 0 ? `${massText(grams)} left` : `${massText(-grams)} too much`);
  const rest = before === null || now === null ? "" : ` From ${room(before)} it came to ${room(now)}.`;
  return `Since it was first stored the build ${way}.${rest}`;
}
