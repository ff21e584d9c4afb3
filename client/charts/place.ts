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

function inside(box: Box, [x, y]: Obstacle): boolean {
  return x >= box.x && x <= box.x + box.width && y >= box.y && y <= box.y + box.height;
}

function cost(
  box: Box,
  rank: number,
  placed: readonly Box[],
  obstacles: readonly Obstacle[],
  room: Box,
): number {
  const texts = placed.filter((other) => overlap(box, other) > 0).length;
  const area = box.width * box.height;
  const out = area === 0 ? 0 : 1 - overlap(box, room) / area;
  const points = obstacles.filter((point) => inside(box, point)).length;
  return (
    COST.rank * rank + COST.text * texts + (out > 1e-9 ? COST.outside * (1 + out) : 0) + COST.point * points
  );
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
      const price = cost(box, rank, placed, obstacles, room);
      if (price < least) [best, least] = [box, price];
    });
    placed.push(best);
  }
  return placed;
}

/** Mean advance of the page's sans type against its size; wide enough for capitals and digits. */
const ADVANCE = 0.56;

/** @returns width of a line of text [px], near enough to keep labels apart without measuring */
export function textWidth(text: string, size = 12.5): number {
  return text.length * ADVANCE * size;
}
