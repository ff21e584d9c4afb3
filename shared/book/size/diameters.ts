/** Two ends of the sizes that are looked at [m]. */
export interface Range {
  readonly from: number;
  readonly to: number;
}

/** Sizes that are looked at beside the first one unless asked for [-]. */
const [SMALLER, LARGER] = [0.7, 1.7];
/** Sizes are looked at in steps that can be printed [m], at least so many of them. */
const STEPS = [1e-4, 2e-4, 5e-4, 1e-3, 2e-3, 5e-3, 1e-2] as const;
const LEAST_SIZES = 36;
const SLACK = 1e-9;

const round = (diameter: number) => Math.round(diameter * 1000) / 1000;

/** @returns the sizes that are looked at where none are asked for: to either side of one [m] */
export function rangeAround(diameter: number): Range {
  return { from: round(SMALLER * diameter), to: round(LARGER * diameter) };
}

/** @returns diameters from one to another in a round step [m]; none where they are reversed */
export function diametersOf({ from, to }: Range): number[] {
  if (!(to > from)) return [];
  const step = [...STEPS].reverse().find((each) => (to - from) / each >= LEAST_SIZES) ?? STEPS[0];
  const [first, last] = [Math.ceil(from / step - SLACK), Math.floor(to / step + SLACK)];
  const most = Math.min(last - first + 1, 10 * LEAST_SIZES);
  return Array.from({ length: Math.max(0, most) }, (_, i) => Number(((first + i) * step).toFixed(6)));
}
