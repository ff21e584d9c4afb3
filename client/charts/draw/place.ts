export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface Spot {
  /** top left corner [px] */
  readonly x: number;
  readonly y: number;
}

export interface WantedBox {
  readonly width: number;
  readonly height: number;
  /** where it may stand, the best first */
  readonly spots: readonly Spot[];
}

/** Points that a label should rather not cover, such as those of a curve. */
export type Obstacle = readonly [x: number, y: number];

/** What covering costs, so that text never lies on text while another spot is free. */
const COST = { text: 1000, outside: 2000, point: 12, rank: 1 } as const;

function overlap(a: Box, b: Box): number {
  const width = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x);
  const height = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y);
  return width > 0 && height > 0 ? width * height : 0;
}

function pointsInside(box: Box, obstacles: readonly Obstacle[]): number {
  const [right, bottom] = [box.x + box.width, box.y + box.height];
  let count = 0;
  for (let i = 0; i < obstacles.length; i++) {
    const point = obstacles[i];
    if (point[0] >= box.x && point[0] <= right && point[1] >= box.y && point[1] <= bottom) count += 1;
  }
  return count;
}

/** What a spot costs before the points under it are counted. */
function costOfPlace(box: Box, rank: number, placed: readonly Box[], room: Box): number {
  let texts = 0;
  for (const other of placed) if (overlap(box, other) > 0) texts += 1;
  const area = box.width * box.height;
  const out = area === 0 ? 0 : 1 - overlap(box, room) / area;
  return COST.rank * rank + COST.text * texts + (out > 1e-9 ? COST.outside * (1 + out) : 0);
}

/**
 * Puts labels where they cover neither each other nor, as far as can be, the curves.
 *
 * @param wanted - in order of importance; each takes the cheapest of its spots
 * @param obstacles - points of the curves [px]
 * @param room - the plot's box
 * @returns a box for each, in the order given
 */
export function placeFree(wanted: readonly WantedBox[], obstacles: readonly Obstacle[], room: Box): Box[] {
  const placed: Box[] = [];
  for (const { width, height, spots } of wanted) {
    let best: Box = { x: 0, y: 0, width, height };
    let least = Number.POSITIVE_INFINITY;
    spots.forEach((spot, rank) => {
      const box = { ...spot, width, height };
      const place = costOfPlace(box, rank, placed, room);
      if (!(place < least)) return;
      const price = place + COST.point * pointsInside(box, obstacles);
      if (price < least) [best, least] = [box, price];
    });
    placed.push(best);
  }
  return placed;
}

/** Shares of a region's width and height at which its name is tried, the middle first. */
const MIDDLES = [0.5, 0.3, 0.7, 0.15, 0.85];

/** @returns where text of a length stays between 0 and an end, as near to where it is wanted as can be [px] */
const kept = (wanted: number, length: number, end: number) => Math.max(0, Math.min(end - length, wanted));

type Size = Pick<Box, "width" | "height">;

/**
 * @param region - what is named [px]
 * @param text - of its name [px]
 * @param plot - both are in it [px]
 * @returns spots round the middle of a region; where the name is wider than the region, at least inside the plot
 */
export function spotsWithin(region: Box, text: Size, plot: Size): Spot[] {
  return MIDDLES.flatMap((up) =>
    MIDDLES.map((along) => ({
      x: kept(region.x + along * region.width - text.width / 2, text.width, plot.width),
      y: kept(region.y + up * region.height - text.height / 2, text.height, plot.height),
    })),
  );
}
