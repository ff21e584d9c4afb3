import { type ScaleContinuousNumeric, scaleLinear, scaleLog } from "d3";
import type { Frame } from "../../../charts/frame.ts";
import type { Axis, Plot } from "./plot.ts";

export type Scale = ScaleContinuousNumeric<number, number>;

export interface Scales {
  readonly x: Scale;
  readonly y: Scale;
}

function scaleOf(axis: Axis, range: [number, number]): Scale {
  return (axis.log ? scaleLog() : scaleLinear()).domain([axis.from, axis.to]).range(range);
}

export function scalesOf(plot: Plot, frame: Pick<Frame, "rangeX" | "rangeY">): Scales {
  return { x: scaleOf(plot.x, frame.rangeX), y: scaleOf(plot.y, frame.rangeY) };
}

const DECADE_STEPS = [1, 2, 5];

/** @returns 1, 2, 5 of each decade between two positive numbers */
export function logTicks(from: number, to: number): number[] {
  const ticks: number[] = [];
  for (let e = Math.floor(Math.log10(from)); e <= Math.ceil(Math.log10(to)); e++) {
    for (const step of DECADE_STEPS) {
      const value = Number(`${step}e${e}`);
      if (value >= from && value <= to) ticks.push(value);
    }
  }
  return ticks;
}
