import { line, scaleLinear } from "d3";
import type { WarmUp } from "../../../../shared/decide/limits/warmUp.ts";
import { CELSIUS_ZERO } from "../../../../shared/physics/constants.ts";
import { axisBottom, axisSide } from "../../../charts/axes.ts";
import type { ChartSize } from "../../../charts/Chart.tsx";
import { chartFrame, type Frame } from "../../../charts/frame.ts";

export interface WindingPicture {
  readonly warmUp: WarmUp;
  /** [K]; null where it isn't known */
  readonly limit: number | null;
  readonly estimated: boolean;
}

type Sample = WarmUp["samples"][number];
type Scale = (value: number) => number;

const MARGIN = { top: 34, right: 14, bottom: 46, left: 46 } as const;
const MINUTE = 60;
/** From this span on the time is shown in minutes [s]. */
const IN_MINUTES = 180;
const TICK_SPACING = { x: 60, y: 36 } as const;
const ROOM = 1.08;
const NAME_LIFT = 6;
const RING = 4.5;

/** @returns height of the picture [px] */
export const windingHeight = (): number => 240;

/** Up to the limit, and beyond it from there on. */
function parts({ warmUp, limit }: WindingPicture): { key: string; of: Sample[] }[] {
  const { samples, timeToLimit } = warmUp;
  if (timeToLimit === null || limit === null) return [{ key: "run-line", of: [...samples] }];
  const at: Sample = { time: timeToLimit, temperature: Math.max(limit, samples[0].temperature) };
  return [
    { key: "run-line", of: [...samples.filter(({ time }) => time < timeToLimit), at] },
    { key: "run-line extrapolated", of: [at, ...samples.filter(({ time }) => time > timeToLimit)] },
  ];
}

function drawLimit(frame: Frame, y: Scale, limit: number | null): void {
  const g = frame.layer("limit");
  const shown = limit === null ? [] : [limit];
  g.selectAll<SVGLineElement, number>("line")
    .data(shown)
    .join("line")
    .attr("class", "needed-line")
    .attr("x2", frame.width)
    .attr("y1", (kelvin) => y(kelvin - CELSIUS_ZERO))
    .attr("y2", (kelvin) => y(kelvin - CELSIUS_ZERO));
  g.selectAll<SVGTextElement, number>("text")
    .data(shown)
    .join("text")
    .attr("class", "needed-text halo")
    .attr("x", 6)
    .attr("y", (kelvin) => y(kelvin - CELSIUS_ZERO) - NAME_LIFT)
    .text((kelvin) => `limit ${(kelvin - CELSIUS_ZERO).toFixed(0)}\u2009°C`);
}

/** Draws the winding's temperature from cold, its limit, and where it meets it. */
export function drawWinding(svg: SVGSVGElement, picture: WindingPicture, size: ChartSize): void {
  const { warmUp, limit, estimated } = picture;
  const frame = chartFrame(svg, { ...size, margin: MARGIN });
  const { samples, timeToLimit } = warmUp;
  const end = samples[samples.length - 1].time;
  const unit = end >= IN_MINUTES ? { size: MINUTE, name: "min" } : { size: 1, name: "s" };
  const celsius = samples.map(({ temperature }) => temperature - CELSIUS_ZERO);
  const start = celsius[0];
  const most = Math.max(...celsius, limit === null ? start + 1 : limit - CELSIUS_ZERO);
  const x = scaleLinear([0, end / unit.size], frame.rangeX);
  const y = scaleLinear([Math.min(0, start), start + ROOM * (most - start)], frame.rangeY).nice(4);
  axisBottom(frame, x, { label: `time from cold, ${unit.name}`, spacing: TICK_SPACING.x });
  const label = `winding temperature, °C${estimated ? " (estimated)" : ""}`;
  axisSide(frame, y, { label, side: "left", grid: true, spacing: TICK_SPACING.y });
  const path = line<Sample>(
    ({ time }) => x(time / unit.size),
    ({ temperature }) => y(temperature - CELSIUS_ZERO),
  );
  frame
    .layer("line")
    .selectAll<SVGPathElement, { key: string; of: Sample[] }>("path")
    .data(parts(picture), (part) => part.key)
    .join("path")
    .attr("class", (part) => part.key)
    .attr("d", (part) => path(part.of));
  drawLimit(frame, y, limit);
  const met = timeToLimit === null || limit === null ? [] : [{ time: timeToLimit, temperature: limit }];
  frame
    .layer("met")
    .selectAll<SVGCircleElement, Sample>("circle")
    .data(met)
    .join("circle")
    .attr("class", "predicted")
    .attr("r", RING)
    .attr("cx", ({ time }) => x(time / unit.size))
    .attr("cy", ({ temperature }) => y(temperature - CELSIUS_ZERO));
}
