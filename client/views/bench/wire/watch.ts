/** A value at a moment [s]. */
export interface Sample {
  readonly time: number;
  readonly value: number;
}

/** A plateau: the mean of what stood still. */
export interface Plateau {
  readonly mean: number;
  readonly from: number;
}

/** A value stands still for so long [s]. */
const STILL_FOR = 1;
/** It may move by this share of itself meanwhile [-]. Judgement. */
const STILL = 0.02;
const LEAST_SAMPLES = 4;

/** Follows one value: its latest second, and whether that stands still. */
export class Watched {
  private samples: Sample[] = [];
  peak = Number.NEGATIVE_INFINITY;

  push(sample: Sample): void {
    const last = this.samples.at(-1);
    // a clock that went back begins anew
    if (last && sample.time < last.time) this.samples = [];
    this.samples.push(sample);
    while (this.samples.length > 1 && this.samples[1].time <= sample.time - STILL_FOR) this.samples.shift();
    this.peak = Math.max(this.peak, sample.value);
  }

  /** @returns the mean of the last second where the value stood still through it; null where it moved */
  plateau(): Plateau | null {
    const [first, last] = [this.samples[0], this.samples.at(-1)];
    if (!last || this.samples.length < LEAST_SAMPLES || last.time - first.time < STILL_FOR) return null;
    const values = this.samples.map(({ value }) => value);
    const mean = values.reduce((sum, each) => sum + each, 0) / values.length;
    const range = Math.max(...values) - Math.min(...values);
    return range <= STILL * Math.abs(mean) ? { mean, from: first.time } : null;
  }
}

/** A pull that is over: the greatest load that was read, and the next that it didn't reach. */
export interface Pull {
  readonly held: number;
  readonly letGo: number;
}

/** A load has let go once it falls below this share of its greatest [-]. Judgement. */
const DROPPED = 0.5;
/** A load that rises by less than this share of the greatest pull so far is no new pull [-]. Judgement. */
const NOTHING = 0.1;

/** Follows a load: it rises, and drops where the vehicle lets go. */
export class PullWatch {
  private greatest = 0;
  private rise = 0;
  private last = 0;
  private best = 0;
  /** since a pull is over, the least load that was read; null while one is under way */
  private lowest: number | null = null;

  /** @returns the pull that ended with this load; null while none did */
  push(load: number): Pull | null {
    const step = load - this.last;
    this.last = load;
    if (this.lowest !== null) {
      this.lowest = Math.min(this.lowest, load);
      if (load <= this.lowest + NOTHING * this.best) return null;
      this.lowest = null;
      this.greatest = Number.NEGATIVE_INFINITY;
    }
    if (load > this.greatest) [this.greatest, this.rise] = [load, step];
    if (load > DROPPED * this.greatest || !(this.greatest > 0)) return null;
    const held = this.greatest;
    this.best = Math.max(this.best, held);
    this.lowest = load;
    return { held, letGo: held + this.rise };
  }
}
