import { area, line } from "d3";
import type { Group } from "../../../charts/frame.ts";
import type { Band, Bracket, Level, Line, Mark } from "./plot.ts";
import type { Scales } from "./scales.ts";
import { shapePath } from "./shapes.ts";

interface Box extends Scales {
  readonly width: number;
  readonly height: number;
}

const finite = (...values: number[]) => values.every(Number.isFinite);

/** Ribbons of doubt, the wider and lighter ones first. */
export function bands(g: Group, data: readonly Band[], { x, y }: Scales): void {
  const shape = area<Band["points"][number]>()
    .defined((point) => finite(point.lo, point.hi))
    .x((point) => x(point.x))
    .y0((point) => y(point.lo))
    .y1((point) => y(point.hi));
  g.selectAll<SVGPathElement, Band>("path")
    .data(data, (band) => band.key)
    .join("path")
    .attr("class", (band) => `curves-band tone-${band.tone} ${band.strength}`)
    .attr("d", (band) => shape([...band.points]));
}

/** Fitted and compared lines; a value that is missing breaks the line. */
export function lines(g: Group, data: readonly Line[], { x, y }: Scales): void {
  const shape = line<Line["points"][number]>()
    .defined((point) => finite(point.x, point.y))
    .x((point) => x(point.x))
    .y((point) => y(point.y));
  g.selectAll<SVGPathElement, Line>("path")
    .data(data, (each) => each.key)
    .join("path")
    .attr("class", (each) => `curves-line tone-${each.tone} ${each.style}`)
    .attr("d", (each) => shape([...each.points]));
}

/** Straight lines across the whole plot: zero, a mean, the range that was tested. */
export function levels(g: Group, data: readonly Level[], box: Box): void {
  const at = (level: Level) => (level.along === "x" ? box.y(level.at) : box.x(level.at));
  g.selectAll<SVGLineElement, Level>("line")
    .data(data, (level) => level.key)
    .join("line")
    .attr("class", (level) => `curves-level tone-${level.tone}`)
    .attr("x1", (level) => (level.along === "x" ? 0 : at(level)))
    .attr("x2", (level) => (level.along === "x" ? box.width : at(level)))
    .attr("y1", (level) => (level.along === "x" ? at(level) : 0))
    .attr("y2", (level) => (level.along === "x" ? at(level) : box.height));
}

const RING = 9;

/** Readings: one outlined shape a test; those set aside are quiet, an outlier wears a ring. */
export function marks(g: Group, data: readonly Mark[], { x, y }: Scales): void {
  const place = (mark: Mark) => `translate(${x(mark.x)},${y(mark.y)})`;
  const seen = data.filter((mark) => finite(x(mark.x), y(mark.y)));
  g.selectAll<SVGCircleElement, Mark>("circle")
    .data(
      seen.filter((mark) => mark.outlier && !mark.aside),
      (mark) => mark.key,
    )
    .join("circle")
    .attr("class", "curves-outlier")
    .attr("r", RING)
    .attr("transform", place);
  g.selectAll<SVGPathElement, Mark>("path")
    .data(seen, (mark) => mark.key)
    .join("path")
    .attr("class", (mark) => `curves-mark tone-${mark.tone}${mark.aside ? " aside" : ""}`)
    .attr("d", (mark) => shapePath(mark.shape))
    .attr("transform", place);
}

const CAP = 4;

/** A bracket: a bar from the last that held to the first that did not; an arrow where it stays open. */
function bracketPath(bracket: Bracket, box: Box): string {
  const upright = bracket.along === "y";
  const [scale, cross] = upright ? [box.y, box.x] : [box.x, box.y];
  const end = upright ? 0 : box.width;
  const lo = scale(bracket.lo);
  const hi = bracket.hi === null ? end : scale(bracket.hi);
  const at = cross(bracket.at);
  const point = (along: number, aside: number) =>
    upright ? `${at + aside},${along}` : `${along},${at + aside}`;
  const back = upright ? CAP : -CAP;
  const tip =
    bracket.hi === null
      ? `M${point(hi + back, -CAP)}L${point(hi, 0)}L${point(hi + back, CAP)}`
      : `M${point(hi, -CAP)}L${point(hi, CAP)}`;
  return `M${point(lo, -CAP)}L${point(lo, CAP)}M${point(lo, 0)}L${point(hi, 0)}${tip}`;
}

export function brackets(g: Group, data: readonly Bracket[], box: Box): void {
  g.selectAll<SVGPathElement, Bracket>("path")
    .data(data, (bracket) => bracket.key)
    .join("path")
    .attr("class", (bracket) => `curves-bracket tone-${bracket.tone}${bracket.aside ? " aside" : ""}`)
    .attr("d", (bracket) => bracketPath(bracket, box));
}
