import { keptOn } from "../kept.ts";
import type { Contour } from "../model/field.ts";
import type { Layers, Line, Mark, Name, Point, Region, Ring } from "../model/plot.ts";
import type { Group } from "./frame.ts";
import type { Ground } from "./ground.ts";
import { type Box, type Obstacle, placeFree, type Spot, spotsWithin } from "./place.ts";
import { LINE_HEIGHT, textWidth } from "./type.ts";

/** A name with the spots at which it may stand. */
interface Placeable {
  readonly key: string;
  readonly lines: readonly string[];
  readonly tone: string;
  /** the first line is set heavier */
  readonly strong: boolean;
  /** what it speaks of [px]; a hairline leads there from afar. null: it stands beside its line */
  readonly anchor: Spot | null;
  readonly spots: (size: Size) => readonly Spot[];
}

interface Size {
  readonly width: number;
  readonly height: number;
}

const sizeOf = ({ lines, strong }: Pick<Placeable, "lines" | "strong">): Size => ({
  width: Math.max(...lines.map((line, i) => textWidth(line, strong && i === 0))) + 2,
  height: lines.length * LINE_HEIGHT + 1,
});

const linesOf = (name: Name, wide: boolean) => (wide ? name.lines : (name.short ?? name.lines));

const [AWAY, FURTHER] = [19, [1, 1.8, 3, 5]] as const;

/** Spots round an anchor, right of it first, ever farther off. */
function around({ x, y }: Spot, { width, height }: Size): Spot[] {
  return FURTHER.flatMap((far) => {
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

/** Places along a line where its name is tried unless it says others. */
const ALONG = [0.15, 0.05, 0.25, 0.35, 0.45, 0.55, 0.65, 0.75, 0.85, 0.95, 1];
const BESIDE = 9;

/** Spots beside a line at several places along it: right of it, left of it, above and below. */
function beside(points: readonly Obstacle[], shares: readonly number[], { width, height }: Size): Spot[] {
  return shares.flatMap((share) => {
    const [x, y] = points[Math.round(share * (points.length - 1))];
    return [
      { x: x + BESIDE, y: y - height },
      { x: x + BESIDE, y: y + 4 },
      { x: x - width - BESIDE, y: y - height },
      { x: x - width - BESIDE, y: y + 4 },
      { x: x - width / 2, y: y - height - BESIDE },
      { x: x - width / 2, y: y + BESIDE },
    ];
  });
}

function shown(points: readonly Point[], { at, shows }: Ground): Obstacle[] {
  const places: Obstacle[] = [];
  for (const point of points) {
    const place = at(point.x, point.y);
    if (shows(...place)) places.push(place);
  }
  return places;
}

/** Those points that the plot shows [px]. */
const placesOf = keptOn(shown);

function lineName(line: Line, ground: Ground): Placeable[] {
  const { name } = line;
  const places = name ? placesOf(line.points, ground) : [];
  if (!name || places.length === 0) return [];
  const spots = (size: Size) => beside(places, name.along ?? ALONG, size);
  const lines = linesOf(name, ground.wide);
  return [{ key: `line ${line.key}`, lines, tone: line.tone, strong: false, anchor: null, spots }];
}

function ringName(ring: Ring, { at, wide, shows }: Ground): Placeable[] {
  const { name, look } = ring;
  const [x, y] = at(ring.x, ring.y);
  if (!name || !shows(x, y)) return [];
  const predicted = look === "predicted" && ring.letter === undefined;
  const anchor = { x, y };
  const spots = (size: Size) => around(anchor, size);
  const tone = predicted ? "ink" : "quiet";
  return [{ key: `ring ${ring.key}`, lines: linesOf(name, wide), tone, strong: predicted, anchor, spots }];
}

/** Share of the plot's points that a name keeps off: every one of a line, few of a cloud of readings. */
const MOST_MARKS = 200;

const someOf = keptOn((marks: readonly Mark[], ground: Ground) => shown(marks.slice(0, MOST_MARKS), ground));

function obstaclesOf({ lines = [], marks }: Layers, ground: Ground): Obstacle[] {
  return [
    ...lines.flatMap(({ points }) => placesOf(points, ground)),
    ...(marks ? someOf(marks, ground) : []),
  ];
}

const [CLEAR_OF_RING, CLEAR_OF_TEXT, LEAST_LEADER] = [8, 3, 12];

/** The hairline from what is named to its name; none where it stands close by. */
function leader({ anchor }: Placeable, box: Box): string {
  if (!anchor) return "";
  const x = Math.min(box.x + box.width, Math.max(box.x, anchor.x));
  const y = Math.min(box.y + box.height, Math.max(box.y, anchor.y));
  const [dx, dy] = [x - anchor.x, y - anchor.y];
  const length = Math.hypot(dx, dy);
  if (length < LEAST_LEADER) return "";
  const [start, end] = [CLEAR_OF_RING / length, CLEAR_OF_TEXT / length];
  return `M${anchor.x + dx * start},${anchor.y + dy * start}L${x - end * dx},${y - end * dy}`;
}

interface Placed extends Placeable {
  readonly box: Box;
}

function write(g: Group, placed: readonly Placed[]): void {
  g.selectAll<SVGPathElement, Placed>("path")
    .data(placed, ({ key }) => key)
    .join("path")
    .put("class", "leader")
    .put("d", (each) => leader(each, each.box));
  const texts = placed.flatMap(({ key, lines, tone, strong, box }) =>
    lines.map((text, i) => ({ key: `${key} ${i}`, text, tone, strong: strong && i === 0, i, box })),
  );
  g.selectAll<SVGTextElement, (typeof texts)[number]>("text")
    .data(texts, ({ key }) => key)
    .join("text")
    .put("class", ({ tone, strong }) => `chart-name tone-${tone}${strong ? " strong" : ""}`)
    .put("x", ({ box }) => box.x + 1)
    .put("y", ({ box, i }) => box.y + LINE_HEIGHT * (i + 1) - 3.5)
    .say(({ text }) => text);
}

const extent = (values: readonly number[]) => [Math.min(...values), Math.max(...values)] as const;

/** A region is named inside it, somewhere round its middle; one narrower than its name at least inside the plot. */
function regionName({ key, tone, outline, name }: Region, ground: Ground): Placeable[] {
  const corners = outline.map(({ x, y }) => ground.at(x, y));
  if (!name || corners.length === 0) return [];
  const [left, right] = extent(corners.map(([x]) => Math.min(ground.width, Math.max(0, x))));
  const [top, bottom] = extent(corners.map(([, y]) => Math.min(ground.height, Math.max(0, y))));
  const region: Box = { x: left, y: top, width: right - left, height: bottom - top };
  const spots = (size: Size) => spotsWithin(region, size, ground);
  const lines = linesOf(name, ground.wide);
  return [{ key: `region ${key}`, lines, tone, strong: false, anchor: null, spots }];
}

/** A contour is named on its own line, on the longest of its rings. */
function contourName({ step, words, rings }: Contour, { shows }: Ground): Placeable[] {
  const seen = rings.map((ring) => ring.filter(([x, y]) => shows(x, y)));
  const longest = seen.reduce((long, ring) => (ring.length > long.length ? ring : long), []);
  if (longest.length === 0) return [];
  const spots = ({ width, height }: Size) =>
    ALONG.map((share) => {
      const [x, y] = longest[Math.round(share * (longest.length - 1))];
      return { x: x - width / 2, y: y - height / 2 };
    });
  return [{ key: `contour ${step}`, lines: [words], tone: "ink", strong: false, anchor: null, spots }];
}

interface Around {
  readonly contours: readonly Contour[];
  /** what else is not to be covered [px] */
  readonly obstacles: readonly Obstacle[];
}

/**
 * Writes the names that stand in the plot: rings first, then lines, then regions, each where it covers neither another
 * nor a curve, led by a hairline where it stands off.
 */
export function names(g: Group, layers: Layers, ground: Ground, { contours, obstacles }: Around): void {
  const placeable = [
    ...(layers.rings ?? []).flatMap((ring) => ringName(ring, ground)),
    ...(layers.lines ?? []).flatMap((line) => lineName(line, ground)),
    ...(layers.regions ?? []).flatMap((region) => regionName(region, ground)),
    ...contours.flatMap((contour) => contourName(contour, ground)),
  ];
  if (placeable.length === 0) {
    write(g, []);
    return;
  }
  const wanted = placeable.map((each) => {
    const size = sizeOf(each);
    const spots = each.spots(size);
    const held = spots.filter((spot) => ground.holds({ ...spot, ...size }));
    return { ...size, spots: held.length > 0 ? held : spots };
  });
  const room = { x: 0, y: 0, width: ground.width, height: ground.height };
  const boxes = placeFree(wanted, [...obstaclesOf(layers, ground), ...obstacles], room);
  write(
    g,
    placeable.map((each, i) => ({ ...each, box: boxes[i] })),
  );
}
