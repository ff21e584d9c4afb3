import type { Book } from "#shared/book/book.ts";
import { buildUncertainty } from "#shared/book/buildUncertainty.ts";
import { resolveBuild } from "#shared/book/resolve.ts";
import { uncertaintyOf } from "#shared/decide/uncertainty.ts";
import { type Made, maker } from "./maker.ts";
import type { Scenario } from "./scenarios.ts";

/** A chance of holding as it was said, and what came of it. */
export interface Said {
  readonly chance: number;
  readonly held: boolean;
}

/** What many makers of one scenario found. */
export interface Covered {
  readonly makers: number;
  /** share of true pulls within 5 to 95 % [-] */
  readonly inside: number;
  /** mean of median over truth, less 1 [-] */
  readonly bias: number;
  /** mean width of 5 to 95 % over the median [-] */
  readonly width: number;
  /** one of each maker, parked on a ceiling */
  readonly said: readonly Said[];
}

const SAMPLES = 256;

function answerOf({ book, build }: Made, seed: number) {
  const resolved = resolveBuild(book, build);
  const { input } = resolved;
  if (!input) throw new Error(resolved.missing.map(({ message }) => message).join(" "));
  const { sources: _said, ...uncertain } = buildUncertainty(book, build, resolved);
  const { suction, attitudes } = uncertaintyOf(input, {
    ...uncertain,
    samples: SAMPLES,
    seed,
    angles: [180],
  });
  const { p5, p50, p95 } = suction;
  if (p5 === null || p50 === null || p95 === null) throw new Error("no pull");
  return { p5, p50, p95, chance: attitudes[0].parked.holds };
}

/** Makers of a scenario, one a seed, each held to account. */
export function coveredBy(demo: Book, scenario: Scenario, makers: number, first = 1): Covered {
  let [inside, bias, width] = [0, 0, 0];
  const said: Said[] = [];
  for (let i = 0; i < makers; i++) {
    const made = maker(demo, scenario, 7919 * (first + i));
    const { p5, p50, p95, chance } = answerOf(made, first + i);
    if (made.pull >= p5 && made.pull <= p95) inside += 1;
    bias += p50 / made.pull - 1;
    width += (p95 - p5) / p50;
    said.push({ chance, held: made.holds });
  }
  return { makers, inside: inside / makers, bias: bias / makers, width: width / makers, said };
}
