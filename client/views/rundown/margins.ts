import { line } from "d3";
import type { Scale } from "../../charts/axes.ts";
import type { Frame, Group } from "../../charts/frame.ts";
import { type SideLabel, sideLabels } from "../../charts/labels.ts";
import type { Answered, Track } from "./answer.ts";

const MINUTE = 60;
const WALL = 90;
const CEILING = 180;
/** A margin far above the target is cut at the top instead of flattening the rest. */
const MOST_OVER_TARGET = 2.5;
const HEADROOM = 1.08;
const OWN_DASHES = ["6 3", "2 3", "12 3 2 3", "4 2 1 2"] as const;
const DOT = 4.5;

export interface MarginScales {
  readonly x: Scale;
  readonly y: Scale;
  /** between the plot and the drawing's right edge [px] */
  readonly right: number;
  /** room for long labels at the right */
  readonly wide: boolean;
}

/** @returns end of the margin scale */
export function mostMargin({ tracks, targetMargin }: Answered): number {
  const finite = tracks.flatMap((track) => track.margins.filter((margin) => margin !== null));
  const most = finite.reduce((high, margin) => Math.max(high, margin), 0);
  const wanted = Math.max(1, targetMargin);
  return HEADROOM * Math.max(wanted, Math.min(most, MOST_OVER_TARGET * wanted));
}

/** Line styles: the wall solid, the ceiling long dashes, the worst solid and heavy, others in dashes of their own. */
function look(track: Track, i: number): { look: string; dash: string | null } {
  if (track.key === "worst") return { look: "margin-line margin-worst", dash: null };
  if (track.angle === WALL) return { look: "margin-line", dash: null };
  if (track.angle === CEILING) return { look: "margin-line", dash: "12 5" };
  return { look: "margin-line", dash: OWN_DASHES[i % OWN_DASHES.length] };
}

/** Needed and wanted, as dotted level lines. */
export function levelLines(g: Group, answered: Answered, { y }: MarginScales, frame: Frame): void {
  const levels = [...new Set([1, answered.targetMargin])];
  g.selectAll<SVGLineElement, number>("line")
    .data(levels, (level) => level)
    .join("line")
    .attr("class", "needed-line")
    .attr("x2", frame.width)
    .attr("y1", (level) => y(level))
    .attr("y2", (level) => y(level));
}

/** Each attitude's margin over the minutes. */
export function marginLines(g: Group, { tracks, samples }: Answered, { x, y }: MarginScales): void {
  const path = (track: Track) =>
    line<number>()
      .defined((i) => track.margins[i] !== null)
      .x((i) => x(samples[i].time / MINUTE))
      .y((i) => y(track.margins[i] ?? 0))(samples.map((_, i) => i));
  g.selectAll<SVGPathElement, Track>("path")
    .data(tracks, (track) => track.key)
    .join("path")
    .attr("class", (track, i) => look(track, i).look)
    .attr("stroke-dasharray", (track, i) => look(track, i).dash)
    .attr("d", path);
}

/** A ring where a margin falls below 1. */
export function fallRings(g: Group, { tracks }: Answered, { x, y }: MarginScales): void {
  const falls = tracks.flatMap(({ key, holds }) => (holds.time === null ? [] : [{ key, time: holds.time }]));
  g.selectAll<SVGCircleElement, (typeof falls)[number]>("circle")
    .data(falls, (fall) => fall.key)
    .join("circle")
    .attr("class", "predicted")
    .attr("r", DOT)
    .attr("cx", (fall) => x(fall.time / MINUTE))
    .attr("cy", y(1));
}

function shortTitle(track: Track, wide: boolean): string {
  const angle = `${track.angle.toFixed(0)}°`;
  if (track.key === "worst") return `worst ${angle}`;
  if (track.angle === WALL) return `wall ${angle}`;
  if (track.angle === CEILING) return `ceiling ${angle}`;
  return wide ? `${track.title} ${angle}` : angle;
}

/** Names at the right end of every line. */
export function marginNames(g: Group, answered: Answered, scales: MarginScales, frame: Frame): void {
  const { y, wide } = scales;
  const inPlot = (margin: number) => Math.min(frame.height, Math.max(0, y(margin)));
  const lines: SideLabel[] = answered.tracks.flatMap((track) => {
    const last = track.margins.at(-1) ?? null;
    if (last === null) return [];
    const tail = ` ${track.angle.toFixed(0)}°`;
    return [{ key: track.key, text: shortTitle(track, wide), tail, y: inPlot(last), tone: "rotor-text" }];
  });
  const target = answered.targetMargin;
  const levels: SideLabel[] = [
    { key: "needed", text: "needed 1\u2009×", y: inPlot(1), tone: "needed-text" },
    ...(target === 1
      ? []
      : [{ key: "wanted", text: `wanted ${target}\u2009×`, y: inPlot(target), tone: "needed-text" }]),
  ];
  sideLabels(g, [...lines, ...levels], { x: frame.width, height: frame.height, room: scales.right });
}
