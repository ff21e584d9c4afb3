import { type BladePass, findBladePass, type Heard } from "./bladePass.ts";
import { LEAST_WINDOW, spectrumOf } from "./spectrum.ts";

/** The speed at one moment of a recording. */
export interface Moment {
  /** of the middle of its window [s] */
  readonly time: number;
  /** of the shaft [rad/s] */
  readonly speed: number;
  /** its standard uncertainty [rad/s] */
  readonly uncertainty: number;
}

/** A rotor whose motor is cut loses so much of its speed within a window. Judgement. */
const SPREAD = 0.03;

/** @returns the shaft's speed that a blade-passing frequency means [rad/s] */
export function speedOf(
  { frequency, uncertainty }: Pick<BladePass, "frequency" | "uncertainty">,
  blades: number,
): {
  readonly speed: number;
  readonly uncertainty: number;
} {
  const perHertz = (2 * Math.PI) / blades;
  return { speed: frequency * perHertz, uncertainty: uncertainty * perHertz };
}

/**
 * The shaft's speed through a recording, window by window; one in which no rotor is heard is left out. Yields which part is
 * done.
 *
 * @param samples - of the sound, full scale 1 [-]
 * @param rate - of the samples [Hz]
 * @param heard - blade count and plausible speeds [rad/s]
 * @returns moments in order [s, rad/s]
 *
 * Valid for a speed that changes by up to some 3 % in a window (0.09 s at 48 kHz). Source: docs/method/sound.md
 */
export function* trackOf(samples: Float32Array, rate: number, heard: Heard): Generator<number, Moment[]> {
  const window = LEAST_WINDOW;
  const hop = window / 2;
  const moments: Moment[] = [];
  for (let at = 0; at + window <= samples.length; at += hop) {
    const found = findBladePass(spectrumOf(samples.subarray(at, at + window), rate, window), {
      ...heard,
      spread: SPREAD,
    });
    if (found) moments.push({ time: (at + window / 2) / rate, ...speedOf(found, heard.blades) });
    yield (at + window) / samples.length;
  }
  return moments;
}

const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1];

/** Moments that belong to the same steady sound lie within this of their median. Judgement. */
const STEADY = 0.05;

/**
 * One speed for a recording: the median of its moments, uncertain by the median of theirs and by how they scatter.
 *
 * @returns [rad/s]; null where no rotor is heard in it, or the speed is none that lasts
 */
export function steadySpeed(
  moments: readonly Moment[],
): { readonly speed: number; readonly uncertainty: number } | null {
  if (moments.length === 0) return null;
  const speed = median(moments.map((moment) => moment.speed));
  const near = moments.filter((moment) => Math.abs(moment.speed / speed - 1) < STEADY);
  if (near.length * 2 < moments.length) return null;
  const own = median(near.map(({ uncertainty }) => uncertainty));
  const scatter = Math.sqrt(near.reduce((sum, moment) => sum + (moment.speed - speed) ** 2, 0) / near.length);
  return { speed, uncertainty: Math.hypot(own, scatter) };
}
