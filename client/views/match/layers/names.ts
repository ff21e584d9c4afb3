import { STANDARD_GRAVITY } from "../../../../shared/physics/constants.ts";
import type { LeakCurvePoint } from "../../../../shared/physics/curves.ts";
import { formatFixed, formatQuantity } from "../../../../shared/units/format.ts";
import type { Group } from "../../../charts/frame.ts";
import {
  type Box,
  type Obstacle,
  placeFree,
  type Spot,
  textWidth,
  type WantedBox,
} from "../../../charts/place.ts";
import { cavityPoint } from "../../../state/outcome.ts";
import type { Picture } from "../picture.ts";
import type { MatchContext } from "./context.ts";
import type { Overlay } from "./overlays.ts";

type FlowPoint = Pick<LeakCurvePoint, "flow" | "pressure">;

export interface Name {
  readonly key: string;
  readonly lines: readonly string[];
  readonly tone: string;
  /** what it speaks of [px] */
  readonly anchor: Spot;
  readonly spots: readonly Spot[];
  /** a hairline leads to the anchor */
  readonly led: boolean;
}

const LINE = 15;
const AWAY = 24;
const LEAST_LEADER = 12;

function size(lines: readonly string[]): { width: number; height: number } {
  return { width: Math.max(...lines.map((line) => textWidth(line))), height: lines.length * LINE + 3 };
}

/** Spots round an anchor, right of it first, ever farther off. */
export function around({ x, y }: Spot, lines: readonly string[]): Spot[] {
  const { width, height } = size(lines);
  return [0.8, 1.5, 2.5, 4].flatMap((far) => {
    const away = AWAY * far;
    return [
      { x: x + away, y: y - height - away / 2 },
      { x: x + away, y: y + away / 2 },
      { x: x - width - away, y: y + away / 2 },
      { x: x - width - away, y: y - height - away / 2 },
      { x: x - width / 2, y: y - height - away },
      { x: x - width / 2, y: y + away },
    ];
  });
}

function pointName(picture: Picture, { x, y }: MatchContext): Name[] {
  const point = cavityPoint(picture.outcome);
  if (!point) return [];
  const { flow, pressure, rpm, extrapolated } = point;
  const pull = formatFixed(((picture.outcome.prediction?.suction ?? 0) / STANDARD_GRAVITY) * 1000, 0);
  const lines = [
    `${formatFixed(pressure, 0)} Pa · ${pull} g`,
    `${formatQuantity(flow, "flow")} · ${formatFixed(Math.round(rpm), 0)} rpm`,
    ...(extrapolated
      ? [picture.outcome.resolved?.rotor?.basis === "estimated" ? "estimated" : "extrapolated"]
      : []),
  ];
  const anchor = { x: x(flow), y: y(pressure) };
  return [{ key: "point", lines, tone: "strong-text", anchor, spots: around(anchor, lines), led: true }];
}

/** Spots beside a curve at several places along it: right of it, left of it, above and below. */
export function along(
  points: readonly FlowPoint[],
  shares: readonly number[],
  lines: readonly string[],
  { x, y }: MatchContext,
): Spot[] {
  const { width, height } = size(lines);
  return shares.flatMap((share) => {
    const point = points[Math.round(share * (points.length - 1))];
    const [px, py] = [x(point.flow), y(point.pressure)];
    return [
      { x: px + 10, y: py - height },
      { x: px + 10, y: py + 4 },
      { x: px - width - 10, y: py - height },
      { x: px - width - 10, y: py + 4 },
      { x: px - width / 2, y: py - height - 18 },
    ];
  });
}

function fanName(picture: Picture, text: string, context: MatchContext): Name[] {
  const { full } = picture.curves;
  if (full.length === 0) return [];
  const [who, charges] = text.split(" — ");
  const long = textWidth(text) > context.width * 0.62;
  const lines = !context.wide ? [who] : long && charges ? [who, charges] : [text];
  const spots = along(full, [0.12, 0.06, 0.2, 0.3, 0.42, 0.55, 0.68, 0.8], lines, context);
  const anchor = { x: context.x(full[0].flow), y: context.y(full[0].pressure) };
  return [{ key: "fan", lines, tone: "rotor-text", anchor, spots, led: false }];
}

function leakName(picture: Picture, text: string, context: MatchContext): Name[] {
  const { x, y, width } = context;
  const inside = picture.curves.leak.filter((point) => x(point.flow) <= width && y(point.pressure) >= 0);
  const end = inside.at(-1);
  if (!end) return [];
  const anchor = { x: x(end.flow), y: y(end.pressure) };
  const spots = along(inside, [1, 0.96, 0.92, 0.87, 0.8, 0.7, 0.6, 0.5], [text], context);
  return [{ key: "leak", lines: [text], tone: "leak-text", anchor, spots, led: false }];
}

function overlayNames(overlays: readonly Overlay[], { x, y }: MatchContext): Name[] {
  return overlays.flatMap(({ id, letter, name, picture }) => {
    const at = cavityPoint(picture.outcome) ?? picture.curves.rest[0];
    if (!at) return [];
    const anchor = { x: x(at.flow), y: y(at.pressure) };
    const lines = [`${letter} ${name}`];
    return [
      { key: `overlay ${id}`, lines, tone: "quiet-text", anchor, spots: around(anchor, lines), led: true },
    ];
  });
}

function ghostName(ghost: Picture | null, { x, y }: MatchContext): Name[] {
  const point = ghost && cavityPoint(ghost.outcome);
  if (!point) return [];
  const anchor = { x: x(point.flow), y: y(point.pressure) };
  const lines = ["as it was"];
  return [{ key: "ghost", lines, tone: "quiet-text", anchor, spots: around(anchor, lines), led: true }];
}

function obstaclesOf(picture: Picture, { x, y, width }: MatchContext): Obstacle[] {
  const { rest, full, cutOff, leak } = picture.curves;
  const curves = [rest, full, cutOff, leak].flatMap((curve) =>
    curve.map((point): Obstacle => [x(point.flow), y(point.pressure)]),
  );
  const crosses = picture.measured.slice(0, 200).map((point): Obstacle => [x(point.flow), y(point.pressure)]);
  const levels = picture.levels.flatMap((level) =>
    [0.25, 0.5, 0.75, 0.95].map((share): Obstacle => [share * width, y(level.pressure)]),
  );
  return [...curves, ...crosses, ...levels];
}

function leader(name: Name, box: Box): string {
  const nearestX = Math.min(box.x + box.width, Math.max(box.x, name.anchor.x));
  const nearestY = Math.min(box.y + box.height, Math.max(box.y, name.anchor.y));
  const [dx, dy] = [nearestX - name.anchor.x, nearestY - name.anchor.y];
  const length = Math.hypot(dx, dy);
  if (!name.led || length < LEAST_LEADER) return "";
  const start = 8 / length;
  return `M${name.anchor.x + dx * start},${name.anchor.y + dy * start}L${nearestX - (3 * dx) / length},${nearestY - (3 * dy) / length}`;
}

/** Direct labels in the plot: operating point, curves, ghost, laid-over builds; none on another, led where they stand off. */
export function namesLayer(
  g: Group,
  data: {
    readonly picture: Picture;
    readonly ghost: Picture | null;
    readonly overlays: readonly Overlay[];
    readonly fan: string;
    readonly leak: string;
  },
  context: MatchContext,
): void {
  const names = [
    ...pointName(data.picture, context),
    ...leakName(data.picture, data.leak, context),
    ...fanName(data.picture, data.fan, context),
    ...overlayNames(data.overlays, context),
    ...ghostName(data.ghost, context),
  ];
  drawNames(g, names, obstaclesOf(data.picture, context), context);
}

/** Places labels where nothing stands, by their order of importance, and draws them with their hairlines. */
export function drawNames(
  g: Group,
  names: readonly Name[],
  obstacles: readonly Obstacle[],
  context: Pick<MatchContext, "width" | "height">,
): void {
  const wanted: WantedBox[] = names.map((name) => ({ ...size(name.lines), spots: name.spots }));
  const room = { x: 0, y: 0, width: context.width, height: context.height };
  const boxes = placeFree(wanted, obstacles, room);
  const placed = names.map((name, i) => ({ ...name, box: boxes[i] }));
  g.selectAll<SVGPathElement, (typeof placed)[number]>("path")
    .data(placed, (name) => name.key)
    .join("path")
    .attr("class", "leader")
    .attr("d", (name) => leader(name, name.box));
  const texts = placed.flatMap((name) =>
    name.lines.map((text, i) => ({ ...name, key: `${name.key} ${i}`, text, line: i })),
  );
  g.selectAll<SVGTextElement, (typeof texts)[number]>("text")
    .data(texts, (text) => text.key)
    .join("text")
    .attr("class", (text) => `halo ${text.line === 0 ? text.tone : text.tone.replace("strong", "quiet")}`)
    .attr("x", (text) => text.box.x)
    .attr("y", (text) => text.box.y + LINE * (text.line + 1) - 3)
    .text((text) => text.text);
}
