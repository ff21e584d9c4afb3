import { normals } from "./normals.ts";

/** A rotor's sound, made up: harmonics of the blade-passing frequency, noise, a motor's whine. */
export interface RotorSound {
  /** [Hz] */
  readonly rate: number;
  /** [s] */
  readonly seconds: number;
  readonly blades: number;
  /** turns a second at a moment [1/s] */
  readonly turns: (time: number) => number;
  /** amplitude of each harmonic of the blade-passing frequency */
  readonly harmonics: readonly number[];
  /** amplitudes at the shaft's own rate and its multiples */
  readonly shaft?: readonly number[];
  /** noise over the rotor's own sound, both as mean squares [dB] */
  readonly noise?: number;
  /** a tone at another rate: turns of the shaft times this many */
  readonly whine?: { readonly order: number; readonly amplitude: number };
  readonly seed?: number;
}

/** @returns the samples of a rotor's sound, a third of full scale */
export function rotorSound(sound: RotorSound): Float32Array {
  const { rate, seconds, blades, turns, harmonics, shaft = [], noise, whine, seed = 1 } = sound;
  const normal = normals(seed);
  const count = Math.round(rate * seconds);
  const square = [...harmonics, ...shaft].reduce((sum, each) => sum + each ** 2 / 2, 0);
  const sd = noise === undefined ? 0 : Math.sqrt(square * 10 ** (noise / 10));
  const samples = new Float32Array(count);
  let angle = 0;
  for (let i = 0; i < count; i++) {
    angle += (2 * Math.PI * turns(i / rate)) / rate;
    let value = 0;
    for (const [h, amplitude] of harmonics.entries())
      value += amplitude * Math.sin((h + 1) * blades * angle + h);
    for (const [h, amplitude] of shaft.entries()) value += amplitude * Math.sin((h + 1) * angle + 1 + h);
    if (whine) value += whine.amplitude * Math.sin(whine.order * angle + 2);
    if (sd > 0) value += sd * normal();
    samples[i] = value / 3;
  }
  return samples;
}
