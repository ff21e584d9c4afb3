import { ticks as evenTicks, type ScaleContinuousNumeric, scaleLinear, scaleLog } from "d3";
import type { Axis } from "../model/plot.ts";

export type Scale = ScaleContinuousNumeric<number, number>;

/** @returns an axis as pixels of a range */
export function scaleOf(axis: Axis, range: readonly [number, number]): Scale {
  return (axis.log ? scaleLog() : scaleLinear()).domain([axis.from, axis.to]).range(range);
}

/** @returns where an axis has its numbers in a range, as its scale says; of an even axis worked out straight, since a redraw asks for thousands */
export function placing(axis: Axis, range: readonly [number, number]): (value: number) => number {
  const { from, to, log } = axis;
  const step = (range[1] - range[0]) / (to - from);
  return log || !Number.isFinite(step) ? scaleOf(axis, range) : (value) => range[0] + (value - from) * step;
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
