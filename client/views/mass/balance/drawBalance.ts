import { select } from "d3";
import type { Balance } from "../../../../shared/book/mass/balance.ts";
import { scaleOf } from "../../../charts/draw/scales.ts";
import { clippedText, textWidth } from "../../../charts/draw/type.ts";
import type { Spot } from "../../../charts/read/spots.ts";
import type { ChartSize } from "../../../charts/size.ts";

/** What the picture of the balance shows. */
export interface BalancePicture {
  readonly balance: Balance;
  /** between the axle lines [m] */
  readonly wheelbase: number;
  /** of the suction, ahead of the rear axle [m] */
  readonly suction: number;
  /** that counts [m] */
  readonly centre: { readonly fromRear: number; readonly height: number };
}

const [TOP, FOOT, SIDE] = [26, 30, 44];
/** Room for a circle of the whole's mass [px]. */
const LARGEST = 26;
const [LEAST_HEIGHT, MOST_HEIGHT] = [150, 280];

const placed = ({ balance }: BalancePicture) =>
  balance.lines.flatMap(({ name, mass, place }) => (place ? [{ name, mass, place }] : []));

function scalesOf(of: BalancePicture, { width, height }: ChartSize) {
  const lines = placed(of);
  const xs = [0, of.wheelbase, of.suction, of.centre.fromRear, ...lines.map(({ place }) => place.fromRear)];
  const tops = [of.centre.height, ...lines.map(({ place }) => place.height), 1e-3];
  const [from, to, top] = [Math.min(...xs), Math.max(...xs), Math.max(...tops)];
  const scale = Math.min((width - 2 * SIDE) / (to - from || 1), (height - TOP - FOOT - LARGEST) / top);
  const left = (width - scale * (to - from)) / 2;
  return {
    x: scaleOf({ from, to }, [left, left + scale * (to - from)]),
    y: scaleOf({ from: 0, to: top }, [height - FOOT, height - FOOT - scale * top]),
  };
}

/** @returns height of the picture [px] */
export const balanceHeight = (width: number): number =>
  Math.max(LEAST_HEIGHT, Math.min(MOST_HEIGHT, 0.42 * width));

/** @returns where each line stands, by its name [px] */
export function balanceSpots(of: BalancePicture, size: ChartSize): Spot[] {
  const { x, y } = scalesOf(of, size);
  return placed(of).map(({ name, place }) => ({ key: name, x: x(place.fromRear), y: y(place.height) }));
}

/** Draws the vehicle from its side, to scale: axle lines, each mass as a circle of its size, suction and centre of gravity. */
export function drawBalance(element: SVGSVGElement, of: BalancePicture, size: ChartSize): void {
  const svg = select<SVGSVGElement, unknown>(element).attr("width", size.width).attr("height", size.height);
  svg.selectAll("*").remove();
  const { x, y } = scalesOf(of, size);
  const [ground, lines] = [y(0), placed(of)];
  const whole = lines.reduce((sum, { mass }) => sum + mass, 0);
  svg
    .append("line")
    .attr("class", "balance-ground")
    .attr("x2", size.width)
    .attr("y1", ground)
    .attr("y2", ground);
  const mark = (at: number, text: string, look: string, from: number) => {
    svg.append("line").attr("class", look).attr("x1", at).attr("x2", at).attr("y1", from).attr("y2", ground);
    const half = textWidth(text) / 2;
    svg
      .append("text")
      .attr("class", `${look}-name`)
      .attr("x", Math.max(half, Math.min(size.width - half, at)))
      .attr("text-anchor", "middle")
      .attr("y", look === "balance-axle" ? ground + 18 : 14)
      .text(text);
  };
  mark(x(0), "rear axle", "balance-axle", ground - 12);
  mark(x(of.wheelbase), "front axle", "balance-axle", ground - 12);
  mark(x(of.suction), "suction", "balance-suction", TOP - 6);
  for (const { name, mass, place } of lines) {
    const radius = LARGEST * Math.sqrt(mass / whole);
    svg
      .append("circle")
      .attr("class", "balance-mass")
      .attr("cx", x(place.fromRear))
      .attr("cy", y(place.height))
      .attr("r", radius);
    if (radius > 9)
      svg
        .append("text")
        .attr("x", x(place.fromRear) + radius + 3)
        .attr("y", y(place.height) + 4)
        .text(clippedText(name, "", 110));
  }
  const [cx, cy] = [x(of.centre.fromRear), y(of.centre.height)];
  svg
    .append("path")
    .attr("class", "balance-centre")
    .attr("d", `M${cx - 11} ${cy}H${cx + 11}M${cx} ${cy - 11}V${cy + 11}`);
  svg.append("circle").attr("class", "balance-centre").attr("cx", cx).attr("cy", cy).attr("r", 7);
}
