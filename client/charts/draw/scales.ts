import { ticks as evenTicks } from "d3";
import type { Axis } from "../model/plot.ts";

/** Where an axis has its numbers in a range [px]. */
export interface Scale {
  (value: number): number;
  /** @returns the number that stands there */
  readonly invert: (pixels: number) => number;
  /** @returns about so many round numbers of an even axis */
  readonly ticks: (count: number) => number[];
}

const same = (value: number) => value;

/** @returns an axis as pixels of a range; one without length has all its numbers in the middle, a logarithmic one none below or at 0 */
export function scaleOf({ from, to, log }: Omit<Axis, "label">, range: readonly [number, number]): Scale {
  const [even, back] = log ? [Math.log, Math.exp] : [same, same];
  const [start, span] = [even(from), even(to) - even(from)];
  const [low, length] = [range[0], range[1] - range[0]];
  const place =
    span === 0 ? () => low + length / 2 : (value: number) => low + ((even(value) - start) / span) * length;
  return Object.assign(place, {
    invert: (pixels: number) => back(start + ((pixels - low) / length) * span),
    ticks: (count: number) => evenTicks(from, to, count),
  });
}

/** Least pixels between two ticks of a logarithmic axis. */
const LOG_SPACING = 36;

/** 1, 2, 5 of a decade where the axis has room for them, else the decades alone. */
function stepsFor(from: number, to: number, length: number): readonly number[] {
  const decade = length / Math.log10(to / from);
  return decade * Math.log10(2) >= LOG_SPACING
    ? [1, 2, 5]
    : decade * Math.log10(3) >= LOG_SPACING
      ? [1, 3]
      : [1];
}

/** A part of a decade that holds fewer round numbers of {@link stepsFor} than these is divided evenly. */
const LEAST_TICKS = 2;
const EVEN_SPACING = 72;

/** @returns round numbers of each decade between two positive ones, as many as `length` pixels have room for */
export function logTicks(from: number, to: number, length: number): number[] {
  const steps = stepsFor(from, to, length);
  const ticks: number[] = [];
  for (let e = Math.floor(Math.log10(from)); e <= Math.ceil(Math.log10(to)); e++) {
    for (const step of steps) {
      const value = Number(`${step}e${e}`);
      if (value >= from && value <= to) ticks.push(value);
    }
  }
  return ticks.length >= LEAST_TICKS
    ? ticks
    : evenTicks(from, to, Math.max(LEAST_TICKS, Math.floor(length / EVEN_SPACING)));
}

/** @returns decimals that tell numbers so far apart from one another */
export const decimalsOf = (step: number): number => Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
