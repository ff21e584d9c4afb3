import type { Uncertainty } from "../../../shared/decide/uncertainty.ts";
import { pullText } from "../../../shared/decide/verdict/figures.ts";
import { RPM } from "../../../shared/physics/motor.ts";
import { formatQuantity, inUnit } from "../../../shared/units/format.ts";
import { headed, type ShownUnits, unitsShown } from "../../../shared/units/showing.ts";
import { keptOn } from "../../charts/kept.ts";
import type { Line, Mark, Plot, Point, Ribbon, Ring, Spread } from "../../charts/model/plot.ts";
import { cavityPoint } from "../../state/outcome.ts";
import { neededLevel } from "./levelWords.ts";
import type { MeasuredPoint } from "./measured.ts";
import type { Overlay } from "./overlays.ts";
import type { BuildCurves, Picture } from "./picture.ts";

/** What the chart of fan against leak shows. */
export interface MatchDrawing {
  readonly picture: Picture;
  /** the build as it stands, while something is tried */
  readonly ghost: Picture | null;
  readonly overlays: readonly Overlay[];
  /** direct labels of the curves; of the fan's, what follows a dash goes on a line of its own */
  readonly fan: string;
  readonly leak: string;
  /** how long curves glide [ms] */
  readonly duration: number;
  /** 5 to 95 % of the operating point's samples; null where not known */
  readonly spread: Uncertainty["point"];
}

type FlowPoint = { readonly flow: number; readonly pressure: number };

/** Where along their curves the names are tried. */
const ALONG = {
  fan: [0.12, 0.06, 0.2, 0.3, 0.42, 0.55, 0.68, 0.8],
  leak: [1, 0.96, 0.92, 0.87, 0.8, 0.7, 0.6, 0.5],
} as const;

const place = ({ flow, pressure }: FlowPoint): Point => ({
  x: inUnit(flow, "flow"),
  y: inUnit(pressure, "pressure"),
});

const placed = keptOn((curve: readonly FlowPoint[], _units: ShownUnits): readonly Point[] =>
  curve.map(place),
);

/** A curve in the units shown: the same points while neither changes, so that its path is drawn once. */
const pointsOf = (curve: readonly FlowPoint[]) => placed(curve, unitsShown());

const edgesOf = keptOn((one: readonly Point[], other: readonly Point[]) =>
  one.slice(0, other.length).map((point, i) => [point, other[i]] as const),
);

function facing(
  key: string,
  tone: Ribbon["tone"],
  one: readonly FlowPoint[],
  other: readonly FlowPoint[],
): Ribbon {
  return { key, tone, strength: "mean", edges: edgesOf(pointsOf(one), pointsOf(other)) };
}

/** The part of a fan's curve within what was tested. */
const tested = keptOn((rest: BuildCurves["rest"], _always: null) =>
  rest.filter(({ extrapolated }) => !extrapolated),
);

/** Between full charge and its end; between a smaller and a larger gap. */
function ribbonsOf({ full, cutOff, leakUncertainty }: BuildCurves): Ribbon[] {
  const fan = facing("rotor ribbon", "rotor", full, cutOff);
  const leak = leakUncertainty && facing("leak ribbon", "leak", leakUncertainty.less, leakUncertainty.more);
  return leak ? [leak, fan] : [fan];
}

function line(key: string, points: readonly FlowPoint[], look: Omit<Line, "key" | "points">): Line {
  return { key, points: pointsOf(points), ...look };
}

function ghostLines({ curves }: Picture): Line[] {
  return [
    line("ghost fan", curves.rest, { tone: "quiet", style: "solid", weight: "fine" }),
    line("ghost leak", curves.leak, { tone: "quiet", style: "long", weight: "fine" }),
  ];
}

function overlayLines({ id, dash, picture: { curves } }: Overlay): Line[] {
  return [
    line(`over ${id} fan`, curves.rest, { tone: "rotor", style: { dash } }),
    line(`over ${id} leak`, curves.leak, { tone: "leak", style: { dash }, weight: "fine" }),
  ];
}

function linesOf({ picture: { curves }, ghost, overlays, fan, leak }: MatchDrawing): Line[] {
  const [who, charges] = fan.split(" — ");
  const fanName = { lines: charges ? [who, charges] : [who], short: [who], along: ALONG.fan };
  return [
    ...(ghost ? ghostLines(ghost) : []),
    line("full", curves.full, { tone: "rotor", style: "solid", weight: "fine", name: fanName }),
    line("cut-off", curves.cutOff, { tone: "rotor", style: "solid", weight: "fine" }),
    line("leak", curves.leak, { tone: "leak", style: "long", name: { lines: [leak], along: ALONG.leak } }),
    line("rest beyond", curves.rest, { tone: "rotor", style: "dashed" }),
    line("rest", tested(curves.rest, null), { tone: "rotor", style: "solid" }),
    ...overlays.flatMap(overlayLines),
  ];
}

/** What stands beside the operating point, a line each. */
function pointLines({ outcome }: Picture): string[] {
  const point = cavityPoint(outcome);
  if (!point) return [];
  const suction = outcome.prediction?.suction ?? 0;
  const beyond = outcome.resolved?.rotor?.basis === "estimated" ? "estimated" : "extrapolated";
  return [
    `${pullText(suction)} of pull`,
    `${formatQuantity(point.pressure, "pressure", { decimals: 0 })} · ${formatQuantity(point.rpm * RPM, "speed", { decimals: 0 })}`,
    `${formatQuantity(point.flow, "flow")} of leak`,
    ...(point.extrapolated ? [beyond] : []),
  ];
}

function ringsOf({ picture, ghost, overlays }: MatchDrawing): Ring[] {
  const at = (of: Picture) => {
    const point = cavityPoint(of.outcome);
    return point ? [place(point)] : [];
  };
  return [
    ...at(picture).map(
      (point): Ring => ({
        key: "point",
        ...point,
        look: "predicted",
        name: { lines: pointLines(picture), short: pointLines(picture).slice(0, 2) },
      }),
    ),
    ...overlays.flatMap(({ id, letter, name, picture: other }) =>
      at(other).map(
        (point): Ring => ({
          key: `over ${id}`,
          ...point,
          look: "before",
          letter,
          name: { lines: [`${letter} ${name}`] },
        }),
      ),
    ),
    ...(ghost ? at(ghost) : []).map(
      (point): Ring => ({ key: "ghost", ...point, look: "before", name: { lines: ["as it was"] } }),
    ),
  ];
}

/** @returns readings as crosses; those that were set aside are fainter */
export function crosses(points: readonly MeasuredPoint[], at: (point: MeasuredPoint) => Point): Mark[] {
  return points.map((point, i) => ({
    key: `reading ${i}`,
    ...at(point),
    shape: 0,
    tone: "rotor",
    aside: point.setAside !== null,
    outlier: false,
  }));
}

const crossesOf = keptOn((measured: readonly MeasuredPoint[], _units: ShownUnits) =>
  crosses(measured, place),
);

function spreadsOf(spread: Uncertainty["point"]): Spread[] {
  if (!spread) return [];
  const { flow, pressure } = spread;
  if (flow.p5 === null || flow.p50 === null || flow.p95 === null) return [];
  if (pressure.p5 === null || pressure.p50 === null || pressure.p95 === null) return [];
  return [
    {
      key: "point",
      at: place({ flow: flow.p50, pressure: pressure.p50 }),
      x: [inUnit(flow.p5, "flow"), inUnit(flow.p95, "flow")],
      y: [inUnit(pressure.p5, "pressure"), inUnit(pressure.p95, "pressure")],
    },
  ];
}

/** Fan against leak: where they meet the build settles; above a level it holds, below it falls. */
export function matchPlot(drawing: MatchDrawing): Plot {
  const { picture, ghost, overlays } = drawing;
  const all = [picture, ...(ghost ? [ghost] : []), ...overlays.map((overlay) => overlay.picture)];
  const most = Math.max(...all.map(({ mostPressure }) => mostPressure));
  const pull = picture.outcome.pullPerPascal;
  return {
    x: {
      label: headed("flow", "flow"),
      from: 0,
      to: inUnit(Math.max(...all.map(({ mostFlow }) => mostFlow)), "flow"),
    },
    y: { label: headed("suction", "pressure"), from: 0, to: inUnit(most, "pressure") },
    right:
      pull === null ? undefined : { label: headed("pull", "load"), from: 0, to: inUnit(most * pull, "load") },
    ribbons: ribbonsOf(picture.curves),
    lines: linesOf(drawing),
    levels: picture.levels.map((level) =>
      neededLevel(level, inUnit(level.pressure, "pressure"), level.pressure * (pull ?? 0)),
    ),
    marks: crossesOf(picture.measured, unitsShown()),
    spreads: spreadsOf(drawing.spread),
    rings: ringsOf(drawing),
    motion: drawing.duration,
  };
}

/** @returns what a reading said before it was carried to the shown speed, as tooltip and screen reader say it */
export function readingWords(point: MeasuredPoint): string[] {
  const aside = point.setAside === null ? [] : [`Set aside: ${point.setAside}`];
  return [`Read: ${point.read}`, point.test, ...aside];
}

/** @returns what a place of a chart with rings and readings says of itself */
export function placeWords(plot: Plot, measured: readonly MeasuredPoint[], key: string): readonly string[] {
  const ring = plot.rings?.find((each) => each.key === key);
  if (ring) return ring.name?.lines ?? [];
  const point = measured[Number(key.slice("reading ".length))];
  return point ? readingWords(point) : [];
}
