import { NotEnoughDataError, requirePositive } from "../../numeric/errors.ts";
import { fourier } from "../../numeric/fourier.ts";

/** How loud a sound is at each frequency. */
export interface Spectrum {
  /** mean square of each line, from 0 Hz [square of the samples' unit] */
  readonly power: Float64Array;
  /** between two lines [Hz] */
  readonly step: number;
}

/** Fewest samples of a window: at 48 kHz lines of 12 Hz. docs/method/sound.md */
export const LEAST_WINDOW = 4096;
/** Longest window: a rotor's speed keeps still no longer. Judgement. */
const LONGEST_WINDOW = 16_384;

/**
 * The longest window of which a sound holds one; several where it is long.
 *
 * @param samples - of the sound [-]
 * @returns samples of the window, a power of 2 from 4096 to 16 384 [-]
 */
export function windowFor(samples: number): number {
  let window = LEAST_WINDOW;
  while (window * 2 <= samples && window < LONGEST_WINDOW) window *= 2;
  return window;
}

/**
 * Spectrum of a sound: mean of Hann windows that overlap by half.
 *
 * @param samples - of the sound, full scale 1 [-]
 * @param rate - of the samples [Hz]
 * @param window - samples of one window, a power of 2 [-]
 * @returns power by frequency [square of the samples' unit, Hz]
 * @throws {NotEnoughDataError} on fewer samples than one window
 * @throws {OutOfRangeError} on a rate that is not positive
 *
 * Valid for a speed that changes by little within a window. Source: Welch, IEEE Trans. Audio Electroacoust. 15 (1967) 70; docs/method/sound.md
 */
export function spectrumOf(
  samples: ArrayLike<number>,
  rate: number,
  window = windowFor(samples.length),
): Spectrum {
  requirePositive("rate", rate);
  if (samples.length < window)
    throw new NotEnoughDataError(
      `A sound of ${samples.length} samples is too short.`,
      `Record at least ${window}.`,
    );
  const half = window / 2;
  const power = new Float64Array(half + 1);
  const hann = Float64Array.from(
    { length: window },
    (_, i) => 0.5 - 0.5 * Math.cos((2 * Math.PI * i) / window),
  );
  const [re, im] = [new Float64Array(window), new Float64Array(window)];
  const count = Math.floor((samples.length - window) / half) + 1;
  for (let each = 0; each < count; each++) {
    for (let i = 0; i < window; i++) re[i] = samples[each * half + i] * hann[i];
    im.fill(0);
    fourier(re, im);
    // Σ hann² = 3/8 of the window
    for (let k = 0; k <= half; k++) power[k] += (re[k] ** 2 + im[k] ** 2) / (count * 0.375 * window ** 2);
  }
  return { power, step: rate / window };
}
