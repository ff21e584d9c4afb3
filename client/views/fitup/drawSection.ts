import { type Selection, select } from "d3";
import { fromUnit, inUnit } from "../../../shared/units/format.ts";
import { typedText } from "../../../shared/units/shown.ts";
import { BASELINE, clippedText, LINE_HEIGHT, textWidth } from "../../charts/draw/type.ts";
import type { Spot } from "../../charts/read/spots.ts";
import type { ChartSize } from "../../charts/size.ts";
import { sizeText, VERDICT_TONES, VERDICT_WORDS } from "./fitWords.ts";
import { extentOf, type Panel, type Shape } from "./section.ts";

/** Room of a panel's two lines above it, between panels, and of the scale below all [px]. */
const [HEAD, BETWEEN, FOOT] = [2 * LINE_HEIGHT + 14, 28, 34];
/** Tallest picture of a panel, narrowest panel with its words [px]. */
const [TALLEST, NARROWEST] = [230, 158];
/** Least length at which an arrow has room for its heads [px]. */
const ARROW_ROOM = 16;

interface Placed {
  readonly panel: Panel;
  /** left and lower edge of the picture [px] */
  readonly left: number;
  readonly base: number;
  readonly width: number;
}

interface Layout {
  readonly placed: readonly Placed[];
  /** [px/m] */
  readonly scale: number;
  readonly height: number;
}

/** One scale for all: as large as the tallest and the widest allow. */
function scaleOf(panels: readonly Panel[], width: number): number {
  const extents = panels.map(extentOf);
  const tallest = Math.max(...extents.map(({ y0, y1 }) => y1 - y0));
  const widest = Math.max(...extents.map(({ x0, x1 }) => x1 - x0));
  return Math.min(TALLEST / tallest, (0.9 * width) / widest);
}

function roomText({ tight: { room, isSide }, verdict }: Panel): string {
  const left = room < 0 ? `${sizeText(-room)} short` : `${sizeText(room)} left`;
  return `${VERDICT_WORDS[verdict]}: ${left}${isSide ? " a side" : ""}`;
}

/** Side by side, from row to row where the page is narrow. */
function layoutOf(panels: readonly Panel[], width: number): Layout {
  const scale = scaleOf(panels, width);
  const rows: { panel: Panel; width: number; height: number }[][] = [[]];
  let used = 0;
  for (const panel of panels) {
    const { x0, x1, y0, y1 } = extentOf(panel);
    const own = Math.min(width, Math.max(NARROWEST, textWidth(roomText(panel)), scale * (x1 - x0)));
    if (used > 0 && used + own > width) {
      rows.push([]);
      used = 0;
    }
    rows[rows.length - 1].push({ panel, width: own, height: scale * (y1 - y0) });
    used += own + BETWEEN;
  }
  let top = 0;
  const placed = rows.flatMap((row) => {
    const height = Math.max(...row.map((each) => each.height));
    const base = top + HEAD + height;
    let left = 0;
    const row_ = row.map((each) => {
      const at = { panel: each.panel, left, base, width: each.width };
      left += each.width + BETWEEN;
      return at;
    });
    top = base + BETWEEN;
    return row_;
  });
  return { placed, scale, height: top + FOOT - BETWEEN };
}

/** Where a panel's own origin stands [px]. */
function originOf({ panel, left, base, width }: Placed, scale: number): readonly [number, number] {
  const { x0, x1, y0 } = extentOf(panel);
  return [left + width / 2 - (scale * (x0 + x1)) / 2, base + scale * y0];
}

/** @returns the middle of each tight place, by the name of its stack [px] */
export function tightSpots(panels: readonly Panel[], width: number): Spot[] {
  if (panels.length === 0) return [];
  const { placed, scale } = layoutOf(panels, width);
  return placed.map((each) => {
    const [x, y] = originOf(each, scale);
    const { from, to } = each.panel.tight;
    return {
      key: each.panel.name,
      x: x + (scale * (from[0] + to[0])) / 2,
      y: y - (scale * (from[1] + to[1])) / 2,
    };
  });
}

/** @returns height of the picture [px] */
export const sectionHeight = (panels: readonly Panel[], width: number): number =>
  panels.length === 0 ? 0 : layoutOf(panels, width).height;

type Group = Selection<SVGGElement, unknown, null, undefined>;

function drawShape(group: Group, shape: Shape, scale: number): void {
  if ("r" in shape) {
    group
      .append("circle")
      .attr("class", `fit-${shape.look}`)
      .attr("cx", scale * shape.cx)
      .attr("cy", -scale * shape.cy)
      .attr("r", scale * shape.r);
  } else {
    group
      .append("rect")
      .attr("class", `fit-${shape.look}`)
      .attr("x", scale * shape.x)
      .attr("y", -scale * (shape.y + shape.height))
      .attr("width", Math.max(1, scale * shape.width))
      .attr("height", Math.max(1, scale * shape.height));
  }
}

/** A name inside its shape, where it has room. */
function drawLabel(group: Group, shape: Shape, scale: number): void {
  if (shape.label === undefined || shape.look === "wall") return;
  const isCircle = "r" in shape;
  const width = scale * (isCircle ? 1.6 * shape.r : shape.width) - 8;
  const height = scale * (isCircle ? shape.r : shape.height);
  if (height < LINE_HEIGHT || width < textWidth("Motor")) return;
  const x = isCircle ? shape.cx : shape.x + shape.width / 2;
  const y = isCircle ? shape.cy : shape.y + shape.height / 2;
  group
    .append("text")
    .attr("x", scale * x)
    .attr("y", -scale * y + BASELINE)
    .attr("text-anchor", "middle")
    .text(clippedText(shape.label, "", width));
}

/** The tight place: a line across it with a bar at each end, in the verdict's colour. */
function drawTight(group: Group, { tight, verdict }: Panel, scale: number): void {
  const [x1, y1] = [scale * tight.from[0], -scale * tight.from[1]];
  const [x2, y2] = [scale * tight.to[0], -scale * tight.to[1]];
  const across = Math.abs(x2 - x1) > Math.abs(y2 - y1);
  const mark = group.append("g").attr("class", `fit-tight ${VERDICT_TONES[verdict]}`);
  const reach = Math.max(0, (ARROW_ROOM - Math.hypot(x2 - x1, y2 - y1)) / 2);
  const [dx, dy] = across ? [reach * Math.sign(x2 - x1 || 1), 0] : [0, reach * Math.sign(y2 - y1 || -1)];
  mark
    .append("line")
    .attr("x1", x1 - dx)
    .attr("y1", y1 - dy)
    .attr("x2", x2 + dx)
    .attr("y2", y2 + dy);
  for (const [x, y] of [
    [x1, y1],
    [x2, y2],
  ])
    mark
      .append("line")
      .attr("x1", across ? x : x - 7)
      .attr("x2", across ? x : x + 7)
      .attr("y1", across ? y - 7 : y)
      .attr("y2", across ? y + 7 : y);
  mark
    .append("circle")
    .attr("cx", (x1 + x2) / 2)
    .attr("cy", (y1 + y2) / 2)
    .attr("r", Math.max(12, Math.hypot(x2 - x1, y2 - y1) / 2 + 5));
}

function drawPanel(svg: Group, placed: Placed, scale: number): void {
  const { panel, left, base, width } = placed;
  const { y0, y1 } = extentOf(panel);
  const [x, y] = originOf(placed, scale);
  const top = base - scale * (y1 - y0);
  const head = svg.append("g").attr("transform", `translate(${left + width / 2} ${top - 12 - LINE_HEIGHT})`);
  head
    .append("text")
    .attr("class", "fit-name")
    .attr("text-anchor", "middle")
    .text(clippedText(panel.name, "", width, true));
  head
    .append("text")
    .attr("class", `fit-room ${VERDICT_TONES[panel.verdict]}`)
    .attr("y", LINE_HEIGHT)
    .attr("text-anchor", "middle")
    .text(clippedText(roomText(panel), "", width));
  const picture = svg.append("g").attr("transform", `translate(${x} ${y})`);
  for (const shape of panel.shapes) drawShape(picture, shape, scale);
  for (const shape of panel.shapes) drawLabel(picture, shape, scale);
  drawTight(picture, panel, scale);
}

/** Widest that the scale's length is drawn [px]. */
const SCALE_WIDTH = 120;
const ROUND = [5, 2, 1] as const;

/** @returns the longest round length, 1, 2 or 5 with any power of ten of the unit shown, that has room [in that unit] */
function roundLength(most: number): number {
  const power = 10 ** Math.floor(Math.log10(most));
  return (ROUND.find((each) => each * power <= most) ?? 1) * power;
}

/** A round length of the picture as it truly is, so that it can be measured. */
function drawScale(svg: Group, scale: number, y: number): void {
  const length = fromUnit(roundLength(inUnit(SCALE_WIDTH / scale, "length")), "length");
  const width = length * scale;
  const group = svg.append("g").attr("class", "fit-scale").attr("transform", `translate(0 ${y})`);
  group.append("path").attr("d", `M0.5 -4V4M0.5 0H${width}M${width} -4V4`);
  group
    .append("text")
    .attr("x", width + 8)
    .attr("y", BASELINE)
    .text(`${typedText(length, "length", 6)}, all to one scale`);
}

/** Draws every stack in section, all to one scale, the tight place of each ringed. */
export function drawSection(element: SVGSVGElement, panels: readonly Panel[], size: ChartSize): void {
  const svg = select<SVGSVGElement, unknown>(element).attr("width", size.width).attr("height", size.height);
  svg.selectAll("*").remove();
  if (panels.length === 0) return;
  const { placed, scale, height } = layoutOf(panels, size.width);
  const all = svg.append("g");
  for (const each of placed) drawPanel(all, each, scale);
  drawScale(all, scale, height - 12);
}
