/** A value on a line of places, and how many readings stand behind it. */
export interface Weighed {
  readonly value: number;
  readonly weight: number;
}

/**
 * The nearest series that never falls: isotonic regression by pooling neighbours that break the order.
 *
 *     min Σ wᵢ(yᵢ − gᵢ)²,  g₁ ≤ g₂ ≤ …
 *
 * @param series - values in the order of their places, weights above 0 [any unit, -]
 * @returns the non-falling values, one a place [unit of the values]
 *
 * Valid for any series. Source: pool adjacent violators, Ayer et al., Ann. Math. Stat. 26 (1955) 641–647 (from memory)
 */
export function nonFalling(series: readonly Weighed[]): number[] {
  const blocks: { value: number; weight: number; count: number }[] = [];
  for (const { value, weight } of series) {
    let block = { value, weight, count: 1 };
    for (let last = blocks.at(-1); last && last.value > block.value; last = blocks.at(-1)) {
      const sum = last.weight + block.weight;
      block = {
        value: (last.value * last.weight + block.value * block.weight) / sum,
        weight: sum,
        count: last.count + block.count,
      };
      blocks.pop();
    }
    blocks.push(block);
  }
  return blocks.flatMap(({ value, count }) => Array.from({ length: count }, () => value));
}
