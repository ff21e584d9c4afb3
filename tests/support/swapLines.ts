import type { SwapLine } from "#shared/decide/swaps/swaps.ts";
import { createRandom } from "#shared/numeric/random.ts";

/** What a lighter piece costs, by the grams that it saves and something between 0 and 1. */
export type Pricing = (saved: number, random: () => number) => number;

/** The kinds that the literature on knapsacks tries its methods on: uncorrelated to subset sum (Kellerer, Pferschy & Pisinger 2004, ch. 11). */
export const PRICES: Readonly<Record<string, Pricing>> = {
  "prices that have nothing to do with the grams saved": (_saved, random) => Math.round(60 * random()),
  "prices that nearly follow the grams saved": (saved, random) => Math.round(saved + 6 * random()),
  "prices that follow the grams saved, and ten a swap": (saved) => saved + 10,
  "prices that are the grams saved": (saved) => saved,
};

/** Sixty lines of six alternatives each, in whole grams and whole prices. */
export function sixtyLines(price: Pricing, seed = 13): SwapLine[] {
  const { uniform } = createRandom(seed);
  return Array.from({ length: 60 }, () => {
    const mass = Math.round(1 + 60 * uniform());
    const alternatives = Array.from({ length: 6 }, () => {
      const lighter = Math.round(mass * uniform());
      const leadTime = Math.floor(30 * uniform());
      return { mass: lighter, price: Math.max(0, price(mass - lighter, uniform)), leadTime };
    });
    return { quantity: 1, mass, alternatives };
  });
}
