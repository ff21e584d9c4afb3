import type { Spectrum } from "./spectrum.ts";

/** One line of a spectrum, between its samples. */
export interface Peak {
  /** [Hz] */
  readonly frequency: number;
  /** half of its width at half power [Hz] */
  readonly halfWidth: number;
}

/** A steady tone in a Hann window is 1.44 lines wide at half power; a wider peak is of a speed that changed. */
const NARROW = 3;

/** Where the power falls below a share of the peak's, on one side, between two lines. */
function edge(power: Float64Array, top: number, direction: 1 | -1, share: number): number {
  const limit = power[top] * share;
  let k = top;
  while (k + direction > 0 && k + direction < power.length - 1 && power[k + direction] > limit)
    k += direction;
  const [inside, outside] = [power[k], power[k + direction]];
  return k + direction * ((inside - limit) / Math.max(inside - outside, Number.MIN_VALUE));
}

const HALF = 0.5;
/** A peak's foot, for its centre of gravity. */
const FOOT = 0.1;

/** The centre of a peak by a parabola through the logarithms of its three highest lines. */
function vertex(power: Float64Array, top: number): number {
  const [a, b, c] = [power[top - 1], power[top], power[top + 1]].map((value) =>
    Math.log(Math.max(value, 1e-300)),
  );
  const bend = a - 2 * b + c;
  return bend < 0 ? top + (a - c) / (2 * bend) : top;
}

function centre(power: Float64Array, from: number, to: number): number {
  let [sum, moment] = [0, 0];
  for (let k = Math.max(1, Math.ceil(from)); k <= Math.min(power.length - 1, to); k++) {
    sum += power[k];
    moment += power[k] * k;
  }
  return moment / sum;
}

/**
 * The highest peak between two frequencies: a narrow one by a parabola on the log of its power, one that a changing speed has
 * widened by its centre of gravity.
 *
 * @param from - lowest frequency [Hz]
 * @param to - highest frequency [Hz]
 * @returns null where the spectrum has no line between them
 *
 * Valid for one tone between the two. Source: docs/method/sound.md
 */
export function peakBetween({ power, step }: Spectrum, from: number, to: number): Peak | null {
  const first = Math.max(1, Math.ceil(from / step));
  const last = Math.min(power.length - 2, Math.floor(to / step));
  if (last < first) return null;
  let top = first;
  for (let k = first; k <= last; k++) if (power[k] > power[top]) top = k;
  const width = edge(power, top, 1, HALF) - edge(power, top, -1, HALF);
  const at =
    width <= NARROW
      ? vertex(power, top)
      : centre(power, edge(power, top, -1, FOOT), edge(power, top, 1, FOOT));
  return { frequency: at * step, halfWidth: (width * step) / 2 };
}
