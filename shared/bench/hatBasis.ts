/** Knots at even shares of the places that differ, first and last among them. @returns rising knots, `count` of them or as many as there are places */
export function knotsAmong(places: readonly number[], count: number): number[] {
  const different = [...new Set(places)].sort((a, b) => a - b);
  const knots = Math.min(count, different.length);
  return Array.from(
    { length: knots },
    (_, k) => different[Math.round((k * (different.length - 1)) / Math.max(1, knots - 1))],
  );
}

/**
 * Weights of the knots at a place: a line of straight pieces, linear in its values at the knots.
 *
 *     y(z) = Σ bₖ(z)·yₖ,  bₖ the hat over knot k
 *
 * @param knots - rising, two or more [unit of z]
 * @param place - z, between first and last [unit of z]
 * @returns one weight a knot, together 1 [-]
 *
 * Valid between the first and the last knot. Source: definition of linear interpolation
 */
export function hatWeights(knots: readonly number[], place: number): number[] {
  const weights = knots.map(() => 0);
  const above = knots.findIndex((knot) => knot >= place);
  const right = above <= 0 ? 1 : above;
  const share = (place - knots[right - 1]) / (knots[right] - knots[right - 1]);
  weights[right - 1] = 1 - share;
  weights[right] = share;
  return weights;
}
