import { select } from "d3";
import { decimalsFor, formatFixed, formatShort, inUnit, withUnit } from "../../../shared/units/format.ts";
import { unitOf } from "../../../shared/units/showing.ts";
import { type Scale, scaleOf } from "../../charts/draw/scales.ts";
import { clippedText, textWidth } from "../../charts/draw/type.ts";
import type { ChartSize } from "../../charts/size.ts";
import type { Allowed, Headroom } from "./headroom.ts";
import { groupSums, massText } from "./massWords.ts";

const [BAR_TOP, BAR_HEIGHT, ROW_HEIGHT, AXIS_HEIGHT] = [24, 40, 44, 40];
/** Room inside a segment on either side of its name [px]. */
const INSIDE = 6;

/** @returns height of the picture [px] */
export const massHeight = ({ allowed }: Pick<Headroom, "allowed">): number =>
  BAR_TOP + BAR_HEIGHT + 18 + allowed.length * ROW_HEIGHT + AXIS_HEIGHT;

/** The largest mass that the picture has room for [kg]: limits far beyond it would leave the bar no room. */
function endOf({ mass, allowed }: Headroom): number {
  const limits = allowed.flatMap(({ atTarget, atOne }) => [atTarget ?? 0, atOne ?? 0]);
  return Math.max(1e-3, 1.08 * Math.min(Math.max(mass, ...limits), 4 * mass));
}

export const rowText = ({ title, atTarget, atOne }: Allowed, target: string): string => {
  if (atTarget === null) return `${title}: any mass holds`;
  const one = atOne === null ? "any mass" : massText(atOne);
  return `${title}: ${massText(atTarget)} at ${target}, ${one} at 1 ×`;
};

type ToPixels = (kilograms: number) => number;
type Svg = ReturnType<typeof select<SVGSVGElement, unknown>>;

function drawBar(svg: Svg, of: Headroom, x: ToPixels): void {
  let from = 0;
  const segments = groupSums(of).map(({ group, value }, i) => {
    const start = from;
    from += value;
    return { group, start, value, tone: i % 2 };
  });
  const parts = svg.selectAll("g.mass-part").data(segments).join("g").attr("class", "mass-part");
  parts
    .append("rect")
    .attr("class", ({ group, tone }) => (group === "on no line" ? "mass-open" : `mass-tone${tone}`))
    .attr("x", ({ start }) => x(start))
    .attr("y", BAR_TOP)
    .attr("width", ({ start, value }) => Math.max(0, x(start + value) - x(start)))
    .attr("height", BAR_HEIGHT);
  parts
    .filter(({ group, start, value }) => textWidth(group) + 2 * INSIDE <= x(start + value) - x(start))
    .append("text")
    .attr("x", ({ start, value }) => (x(start) + x(start + value)) / 2)
    .attr("y", BAR_TOP + BAR_HEIGHT / 2 + 5)
    .attr("text-anchor", "middle")
    .text(({ group }) => group);
}

function drawLimits(svg: Svg, { allowed, mass, ...of }: Headroom, x: ToPixels, width: number): void {
  const target = `${formatShort(of.target, 2)} ×`;
  const top = BAR_TOP + BAR_HEIGHT + 18;
  const rows = svg.selectAll("g.mass-limit").data(allowed).join("g").attr("class", "mass-limit");
  rows.attr("transform", (_, i) => `translate(0 ${top + i * ROW_HEIGHT})`);
  rows
    .append("text")
    .attr("y", 14)
    .text((each) => clippedText(rowText(each, target), "", width));
  const end = (limit: number | null) => Math.min(width, limit === null ? width : x(limit));
  rows
    .append("line")
    .attr("class", "mass-one")
    .attr("x2", ({ atOne }) => end(atOne))
    .attr("y1", 24)
    .attr("y2", 24);
  rows
    .append("line")
    .attr("class", ({ atTarget }) =>
      atTarget !== null && atTarget < mass ? "mass-target bad" : "mass-target",
    )
    .attr("x2", ({ atTarget }) => end(atTarget))
    .attr("y1", 24)
    .attr("y2", 24);
}

function drawAxis(svg: Svg, x: Scale, size: ChartSize): void {
  const y = size.height - AXIS_HEIGHT + 10;
  const ticks = x.ticks(Math.max(2, Math.floor(size.width / 110)));
  const decimals = decimalsFor(ticks[1] ?? 1, 1);
  const marks = svg.selectAll("g.mass-tick").data(ticks).join("g").attr("class", "mass-tick");
  marks.attr("transform", (shown) => `translate(${x(shown)} ${y})`).attr("aria-hidden", "true");
  marks.append("line").attr("y2", 5);
  marks
    .append("text")
    .attr("y", 20)
    .attr("text-anchor", (shown) => (shown === 0 ? "start" : x(shown) > size.width - 20 ? "end" : "middle"))
    .text((shown) => (shown === 0 ? withUnit("0", unitOf("mass")) : formatFixed(shown, decimals)));
}

/** Where a group of the bar, or an attitude's row, can be read. */
interface Place {
  readonly key: string;
  /** of its middle, or of the end of its solid line [px] */
  readonly x: number;
  readonly y: number;
  /** what of the picture belongs to it [px] */
  readonly from: number;
  readonly to: number;
}

/** @returns the places of the bar from left to right, then the rows from the top */
export function massPlaces(of: Headroom, width: number): { readonly bar: Place[]; readonly rows: Place[] } {
  const x = scaleOf({ from: 0, to: endOf(of) }, [0, width]);
  let start = 0;
  const bar = groupSums(of).map(({ group, value }) => {
    const [from, to] = [x(start), x(start + value)];
    start += value;
    return { key: group, x: (from + to) / 2, y: BAR_TOP + BAR_HEIGHT / 2, from, to };
  });
  const top = BAR_TOP + BAR_HEIGHT + 18;
  const rows = of.allowed.map(({ title, atTarget }, i) => {
    const from = top + i * ROW_HEIGHT;
    const end = atTarget === null ? width : Math.min(width, x(atTarget));
    return { key: title, x: end, y: from + 24, from, to: from + ROW_HEIGHT };
  });
  return { bar, rows };
}

/** Draws what a build weighs as one bar of its groups, and under it how far each attitude lets it grow: solid to the wanted margin, dashed to 1. */
export function drawMass(element: SVGSVGElement, of: Headroom, size: ChartSize): void {
  const svg = select<SVGSVGElement, unknown>(element).attr("width", size.width).attr("height", size.height);
  svg.selectAll("*").remove();
  const scale = scaleOf({ from: 0, to: inUnit(endOf(of), "mass") }, [0, size.width]);
  const x = (kilograms: number) => scale(inUnit(kilograms, "mass"));
  const at = x(of.mass);
  drawBar(svg, of, x);
  svg
    .append("line")
    .attr("class", "mass-now")
    .attr("x1", at)
    .attr("x2", at)
    .attr("y1", BAR_TOP - 4)
    .attr("y2", size.height - AXIS_HEIGHT + 6);
  drawLimits(svg, of, x, size.width);
  const label = `${massText(of.mass)} on board`;
  svg
    .append("text")
    .attr("class", "mass-label")
    .attr("x", Math.max(textWidth(label, true), Math.min(size.width, at)))
    .attr("y", BAR_TOP - 9)
    .attr("text-anchor", "end")
    .text(label);
  drawAxis(svg, scale, size);
}
