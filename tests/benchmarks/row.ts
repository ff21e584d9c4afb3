/** One line of the table. */
export interface Row {
  readonly what: string;
  readonly measured: string;
  /** empty where nothing was promised */
  readonly budget: string;
  /** null where nothing was promised or nothing could be measured */
  readonly kept: boolean | null;
}

const SECOND = { digits: 2, factor: 1, unit: "s" };
const THOUSANDTH = { digits: 1, factor: 1000, unit: "ms" };
/** @returns a time in thousandths */
export const ms = (seconds: number) => `${(seconds * THOUSANDTH.factor).toFixed(THOUSANDTH.digits)} ms`;
/** @returns a time in seconds */
export const s = (seconds: number) => `${seconds.toFixed(SECOND.digits)} s`;
/** @returns a rate in millions */
export const millions = (perSecond: number) => `${(perSecond / 1e6).toFixed(2)} million/s`;
/** @returns a ratio */
export const times = (ratio: number) => `${ratio.toFixed(2)} ×`;

/** @returns memory */
export const megabytes = (value: number) => `${Math.round(value)} MB`;

/** @returns a line of which nothing was promised */
export const told = (what: string, measured: string): Row => ({ what, measured, budget: "", kept: null });
/** @returns a line that keeps its budget up to a value */
export const atMost = (what: string, value: number, most: number, text: (value: number) => string): Row => ({
  what,
  measured: text(value),
  budget: `≤ ${text(most).replace(/\.0+(?= )/, "")}`,
  kept: value <= most,
});
