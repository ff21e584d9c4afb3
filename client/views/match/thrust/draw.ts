import { scaleLinear } from "d3";
import { STANDARD_GRAVITY } from "../../../../shared/physics/constants.ts";
import { RPM } from "../../../../shared/physics/motor.ts";
import type { ThrustCurvePoint } from "../../../../shared/physics/propellerLaw.ts";
import { axisBottom, axisSide } from "../../../charts/axes.ts";
import type { ChartSize } from "../../../charts/Chart.tsx";
import { chartFrame, type Group } from "../../../charts/frame.ts";
import { matchMargin, WIDE } from "../drawMatch.ts";
import type { MatchContext } from "../layers/context.ts";
import { curvePath } from "../layers/curves.ts";
import { levelsLayer } from "../layers/levels.ts";
import { measuredLayer } from "../layers/measured.ts";
import { type PathMark, paths } from "../layers/paths.ts";
import { pointLayer } from "../layers/point.ts";
import type { ThrustDrawing } from "./drawing.ts";
import { thrustNames } from "./names.ts";
import type { ChargeMark, ThrustPicture } from "./picture.ts";

const GRAMS = 1000;
const TICK = 5;

/** @returns scales of the plot: speed [rad/s] and press force [N] to pixels */
export function thrustScales(
  { picture, ghost, overlays }: Pick<ThrustDrawing, "picture" | "ghost" | "overlays">,
  rangeX: [number, number],
  rangeY: [number, number],
) {
  const all = [picture, ...(ghost ? [ghost] : []), ...overlays.map((overlay) => overlay.picture)];
  return {
    x: scaleLinear([0, Math.max(...all.map((each) => each.mostSpeed))], rangeX),
    y: scaleLinear([0, Math.max(...all.map((each) => each.mostForce))], rangeY),
  };
}

const flowOf = ({ speed, thrust }: Pick<ThrustCurvePoint, "speed" | "thrust">) => ({
  flow: speed,
  pressure: thrust,
});

function pathOf(points: readonly ThrustCurvePoint[], context: MatchContext): string {
  return curvePath(points.map(flowOf), context);
}

/** From cut-off to full charge: the stretch of the curve on which the build lives. */
function livedOn({ curve, marks }: ThrustPicture): ThrustCurvePoint[] {
  const [full, cutOff] = [marks.find(({ key }) => key === "full"), marks.find(({ key }) => key === "cutOff")];
  if (!full || !cutOff) return [];
  const between = curve.filter(({ speed }) => speed > cutOff.speed && speed < full.speed);
  return [cutOff, ...between, full];
}

function curveLayer(g: Group, { picture, ghost, overlays }: ThrustDrawing, context: MatchContext): void {
  const marks: PathMark[] = [
    ...(ghost ? [{ key: "ghost", d: pathOf(ghost.curve, context), look: "ghost-line" }] : []),
    { key: "ribbon", d: pathOf(livedOn(picture), context), look: "thrust-ribbon" },
    { key: "beyond", d: pathOf(picture.curve, context), look: "rotor-line extrapolated" },
    {
      key: "tested",
      d: pathOf(
        picture.curve.filter((point) => !point.extrapolated),
        context,
      ),
      look: "rotor-line",
    },
    ...overlays.map(({ id, dash, picture: other }) => ({
      key: `over ${id}`,
      d: pathOf(other.curve, context),
      look: "overlay-fan",
      dash,
    })),
  ];
  paths(g, marks, context);
}

/** Full and cut-off charge as short strokes across the curve. */
function chargeLayer(g: Group, marks: readonly ChargeMark[], { x, y }: MatchContext): void {
  g.selectAll<SVGLineElement, ChargeMark>("line")
    .data(
      marks.filter((mark) => mark.key !== "rest"),
      (mark) => mark.key,
    )
    .join("line")
    .attr("class", "rotor-line")
    .attr("x1", (mark) => x(mark.speed))
    .attr("x2", (mark) => x(mark.speed))
    .attr("y1", (mark) => y(mark.thrust) - TICK)
    .attr("y2", (mark) => y(mark.thrust) + TICK);
}

/** 5 to 95 % of the samples of the press force, as a bar with ends at the charge shown. */
function spreadLayer(g: Group, { picture, spread }: ThrustDrawing, { x, y }: MatchContext): void {
  const rest = picture.marks.find((mark) => mark.key === "rest");
  const { p5, p95 } = spread ?? { p5: null, p95: null };
  const drawn = rest && p5 !== null && p95 !== null;
  const at = drawn ? x(rest.speed) : 0;
  const ends = drawn ? [y(p5), y(p95)] : [];
  const d = ends.map((end) => `M${at - TICK},${end}h${2 * TICK}`).join("");
  g.selectAll<SVGPathElement, string>("path")
    .data(drawn ? [`M${at},${ends[0]}V${ends[1]}${d}`] : [])
    .join("path")
    .attr("class", "point-spread")
    .attr("d", (path) => path);
}

const restOf = (picture: ThrustPicture | null) => {
  const rest = picture?.marks.find((mark) => mark.key === "rest");
  return rest ? flowOf(rest) : null;
};

/** Draws press force against speed; called again with new data it moves what is there. */
export function drawThrust(svg: SVGSVGElement, drawing: ThrustDrawing, size: ChartSize): void {
  const margin = matchMargin(size.width);
  const frame = chartFrame(svg, { ...size, margin });
  const { x, y } = thrustScales(drawing, frame.rangeX, frame.rangeY);
  const { width, height } = frame;
  const { duration } = drawing;
  const wide = size.width >= WIDE;
  const context: MatchContext = { x, y, width, height, right: margin.right, duration, wide };
  const rpm = x.domain().map((speed) => speed / RPM);
  axisBottom(frame, scaleLinear(rpm, x.range()), { label: "speed, rpm" });
  axisSide(frame, y, { label: "press force, N", side: "left", grid: true });
  const grams = y.domain().map((force) => (force * GRAMS) / STANDARD_GRAVITY);
  axisSide(frame, scaleLinear(grams, y.range()), { label: "pull, g", side: "right" });
  const { picture, ghost } = drawing;
  curveLayer(frame.layer("curves", { clipped: true }), drawing, context);
  levelsLayer(frame.layer("levels"), picture.levels, context);
  spreadLayer(frame.layer("spread"), drawing, context);
  const points = { points: picture.measured, picked: drawing.picked };
  measuredLayer(frame.layer("measured", { clipped: true }), points, context);
  chargeLayer(frame.layer("charges"), picture.marks, context);
  pointLayer(frame.layer("point"), { point: restOf(picture), ghost: restOf(ghost) }, context);
  thrustNames(frame.layer("names"), drawing, context);
}
