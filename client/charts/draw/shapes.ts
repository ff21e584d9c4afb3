/** Outlined shapes, distinguishable without colour, as paths relative to their middle for a half-size r; the cross of a measured point comes first. */
const SHAPES: readonly ((r: number) => string)[] = [
  (r) => `m${-r},0h${2 * r}m${-r},${-r}v${2 * r}`,
  (r) => `m0,${-r}l${r},${r}l${-r},${r}l${-r},${-r}z`,
  (r) => `m0,${-r}l${0.87 * r},${1.5 * r}h${-1.74 * r}z`,
  (r) => `m${-0.8 * r},${-0.8 * r}h${1.6 * r}v${1.6 * r}h${-1.6 * r}z`,
  (r) => `m${-0.75 * r},${-0.75 * r}l${1.5 * r},${1.5 * r}m0,${-1.5 * r}l${-1.5 * r},${1.5 * r}`,
  (r) => `m${-0.8 * r},0a${0.8 * r},${0.8 * r} 0 1,0 ${1.6 * r},0a${0.8 * r},${0.8 * r} 0 1,0 ${-1.6 * r},0z`,
  (r) => `m0,${-r}v${2 * r}m${-0.87 * r},${-1.5 * r}l${1.74 * r},${r}m0,${-r}l${-1.74 * r},${r}`,
];

/** Half-size of a shape, of one among thousands, and what each further round of the same shapes adds [px]. */
const [HALF, SMALL, LARGER] = [5, 2.6, 3];

/** @returns the outline of the n-th test's symbol, relative to its middle; after the last shape they begin again, larger */
export function shapePath(index: number, small = false): string {
  const round = Math.floor(index / SHAPES.length);
  return SHAPES[index % SHAPES.length]((small ? SMALL : HALF) + LARGER * round);
}
