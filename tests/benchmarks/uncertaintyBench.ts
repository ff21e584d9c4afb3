import { findById } from "#shared/book/book.ts";
import { buildUncertainty } from "#shared/book/buildUncertainty.ts";
import { resolveBuild } from "#shared/book/resolve.ts";
import { uncertaintyOf } from "#shared/decide/uncertainty.ts";
import { demoBook } from "#tests/support/demoBook.ts";
import { type Repeated, repeated } from "./timing.ts";

const SAMPLES = 2048;
const RUNS = 25;
const BUILD = "pane-crawler";

export interface UncertaintyTimes extends Repeated {
  readonly samples: number;
  readonly attitudes: number;
  /** numbers and causes that are uncertain */
  readonly uncertain: number;
}

/** Monte Carlo of the demo's crawler, every uncertainty that its book holds put in. */
export function timedUncertainty(): UncertaintyTimes {
  const book = demoBook();
  const build = findById(book.builds, BUILD)?.data;
  if (!build) throw new Error(`The demo has no build ${BUILD}.`);
  const resolved = resolveBuild(book, build);
  const { input } = resolved;
  if (!input) throw new Error(`The demo's ${BUILD} has no numbers.`);
  const { sources, ...uncertain } = buildUncertainty(book, build, resolved);
  let seed = 0;
  let attitudes = 0;
  const times = repeated(() => {
    seed += 1;
    attitudes = uncertaintyOf(input, { ...uncertain, samples: SAMPLES, seed }).attitudes.length;
  }, RUNS);
  return { ...times, samples: SAMPLES, attitudes, uncertain: Object.keys(sources).length };
}
