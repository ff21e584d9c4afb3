import type { Book } from "#shared/book/book.ts";
import { buildUncertainty } from "#shared/book/buildUncertainty.ts";
import { resolveBuild } from "#shared/book/resolve.ts";
import { uncertaintyOf } from "#shared/decide/uncertainty.ts";
import { maker } from "./maker.ts";
import type { Scenario } from "./scenarios.ts";

/** What many makers of one scenario found. */
export interface Covered {
  readonly makers: number;
  /** share of true pulls within 5 to 95 % [-] */
  readonly inside: number;
  /** mean of median over truth, less 1 [-] */
  readonly bias: number;
  /** mean width of 5 to 95 % over the median [-] */
  readonly width: number;
}

const SAMPLES = 256;

/** Makers of a scenario, one a seed, each held to account. */
export function coveredBy(demo: Book, scenario: Scenario, makers: number, first = 1): Covered {
  let [inside, bias, width] = [0, 0, 0];
  for (let i = 0; i < makers; i++) {
    const { book, build, truth } = maker(demo, scenario, 7919 * (first + i));
    const resolved = resolveBuild(book, build);
    const { input } = resolved;
    if (!input) throw new Error(resolved.missing.map(({ message }) => message).join(" "));
    const { sources: _said, ...uncertain } = buildUncertainty(book, build, resolved);
    const asked = { ...uncertain, samples: SAMPLES, seed: first + i, angles: [180] };
    const { p5, p50, p95 } = uncertaintyOf(input, asked).suction;
    if (p5 === null || p50 === null || p95 === null) throw new Error("no pull");
    if (truth >= p5 && truth <= p95) inside += 1;
    bias += p50 / truth - 1;
    width += (p95 - p5) / p50;
  }
  return { makers, inside: inside / makers, bias: bias / makers, width: width / makers };
}
