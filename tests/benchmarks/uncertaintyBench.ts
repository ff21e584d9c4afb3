import { findById } from "#shared/book/book.ts";
import { buildUncertainty } from "#shared/book/buildUncertainty.ts";
import { resolveBuild } from "#shared/book/resolve.ts";
import { type StatedUncertainty, uncertaintyOf } from "#shared/decide/uncertainty.ts";
import { demoBook } from "#tests/support/demoBook.ts";
import { median, type Repeated, repeated, secondsOf } from "./timing.ts";

const SAMPLES = 2048;
const RUNS = 25;
const BUILD = "pane-crawler";
/** Runs on running gear that gives under its load. */
const GIVING = "beam-crawler";
/** Of the vehicle's mass alone [kg]. */
const OF_MASS = 0.01;

export interface UncertaintyTimes extends Repeated {
  readonly samples: number;
  readonly attitudes: number;
  /** numbers and causes that are uncertain */
  readonly uncertain: number;
  /** time of all of it over that with the mass alone uncertain, the two in turn [-] */
  readonly overMass: number;
  /** of a build whose gap gives under load, median [s] */
  readonly giving: number;
}

/** Samples a build of the demo, every uncertainty that its book holds put in; another seed each time. */
function samplerOf(id: string) {
  const book = demoBook();
  const build = findById(book.builds, id)?.data;
  if (!build) throw new Error(`The demo has no build ${id}.`);
  const resolved = resolveBuild(book, build);
  const { input } = resolved;
  if (!input) throw new Error(`The demo's ${id} has no numbers.`);
  const { sources, ...all } = buildUncertainty(book, build, resolved);
  let seed = 0;
  const sample = (asked: StatedUncertainty) => {
    seed += 1;
    return uncertaintyOf(input, { ...asked, samples: SAMPLES, seed }).attitudes.length;
  };
  return { all, sample, uncertain: Object.keys(sources).length };
}

/** Both in turn, so that whatever else the machine does meets them alike. */
async function ratioToMass({ all, sample }: ReturnType<typeof samplerOf>): Promise<number> {
  const mass = { uncertainty: { "vehicle.mass": OF_MASS } };
  const ratios: number[] = [];
  for (let i = 0; i < RUNS; i++) {
    const whole = await secondsOf(() => sample(all));
    ratios.push(whole / (await secondsOf(() => sample(mass))));
  }
  return median(ratios);
}

/** Monte Carlo of the demo's crawlers, every uncertainty that their book holds put in. */
export async function timedUncertainty(): Promise<UncertaintyTimes> {
  const rigid = samplerOf(BUILD);
  let attitudes = 0;
  const times = repeated(() => {
    attitudes = rigid.sample(rigid.all);
  }, RUNS);
  const overMass = await ratioToMass(rigid);
  const gives = samplerOf(GIVING);
  const { median: giving } = repeated(() => gives.sample(gives.all), RUNS);
  return { ...times, samples: SAMPLES, attitudes, uncertain: rigid.uncertain, overMass, giving };
}
