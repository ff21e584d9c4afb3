import { extent, scaleLinear } from "d3";
import { RPM } from "../../../shared/physics/motor.ts";
import type { Sample } from "../../../shared/physics/rundown.ts";
import { inUnit } from "../../../shared/units/format.ts";
import { headed } from "../../../shared/units/showing.ts";
import type { Panel } from "../../charts/stack.ts";
import type { Answered } from "./answer.ts";
import { lastMinute, MINUTE, marginPlot } from "./marginPlot.ts";

/** One of the small charts under the margins. */
interface Quantity {
  readonly key: string;
  /** quantity and unit */
  readonly label: string;
  readonly value: (sample: Sample) => number;
}

const PERCENT = 100;
const SMALL = 140;
/** Room for the name of the last plot's axis [px]. */
const AXIS_NAME = 22;
const [LEAST_MAIN, MOST_MAIN, SHAPE] = [270, 430, 0.5];
/** A quantity that hardly changes is not blown up to fill its chart: least span of its axis, of its value [-]. */
const LEAST_SPAN = 0.1;
/** Round numbers on the axis of a small chart, about. */
const NUMBERS = 3;

function quantitiesOf({ winding, windingEstimated, samples, kept }: Answered): Quantity[] {
  const voltage: Quantity = {
    key: "voltage",
    label: "pack voltage under load, V",
    value: (sample) => sample.packVoltage,
  };
  const speed: Quantity = {
    key: "speed",
    label: headed("rotor speed", "speed"),
    value: (sample) => inUnit(sample.rpm * RPM, "speed"),
  };
  const temperature: Quantity = {
    key: "winding",
    label: `${headed("winding temperature", "temperature")}${windingEstimated ? " (estimated)" : ""}`,
    value: (sample) => inUnit(sample.windingTemperature, "temperature"),
  };
  const pressure: Quantity = {
    key: "pressure",
    label: headed("suction under the skirt", "pressure"),
    value: (sample) => inUnit(sample.pressure ?? 0, "pressure"),
  };
  const throttle: Quantity = {
    key: "throttle",
    label: "throttle, %",
    value: (sample) => PERCENT * (sample.duty ?? 1),
  };
  const cavity = samples.some((sample) => sample.pressure !== null) ? [pressure] : [];
  return [...(kept ? [throttle] : []), voltage, speed, ...cavity, ...(winding === null ? [] : [temperature])];
}

function spanOf(values: readonly number[]): { from: number; to: number } {
  const [low = 0, high = 0] = extent(values);
  const lacking = Math.max(0, LEAST_SPAN * Math.abs(high) - (high - low)) / 2;
  const [from, to] = scaleLinear([low - lacking, high + lacking || 1], [0, 1])
    .nice(NUMBERS)
    .domain();
  return { from, to };
}

function quantityPanel(answered: Answered, { key, label, value }: Quantity, last: boolean): Panel {
  const points = answered.samples.map((sample) => ({ x: sample.time / MINUTE, y: value(sample) }));
  const span = spanOf(points.map(({ y }) => y));
  return {
    key,
    height: () => SMALL + (last ? AXIS_NAME : 0),
    plot: {
      x: { label: "time, min", from: 0, to: lastMinute(answered) },
      y: { label, ...span },
      lines: [{ key, tone: "ink", style: "solid", weight: "fine", points }],
    },
  };
}

/** @returns the run's charts over the same minutes: margins, the throttle where a controller sets it, voltage, speed; the winding where its temperature is known, the suction where there is a cavity */
export function panelsOf(answered: Answered): Panel[] {
  const quantities = quantitiesOf(answered);
  return [
    {
      key: "margins",
      plot: marginPlot(answered),
      height: (width) => Math.round(Math.min(MOST_MAIN, Math.max(LEAST_MAIN, width * SHAPE))),
    },
    ...quantities.map((each, i) => quantityPanel(answered, each, i === quantities.length - 1)),
  ];
}
