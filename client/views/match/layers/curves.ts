import { area, line } from "d3";
import type { FanCurvePoint, LeakCurvePoint } from "../../../../shared/physics/curves.ts";
import type { Group } from "../../../charts/frame.ts";
import type { BuildCurves } from "../picture.ts";
import type { MatchContext } from "./context.ts";
import { type PathMark, paths } from "./paths.ts";

type FlowPoint = Pick<LeakCurvePoint, "flow" | "pressure">;

/** @returns the path of a curve in the plot */
export function curvePath(points: readonly FlowPoint[], { x, y }: MatchContext): string {
  return (
    line<FlowPoint>(
      (point) => x(point.flow),
      (point) => y(point.pressure),
    )(points) ?? ""
  );
}

/** The stretch that was tested, its ends included. */
function tested(points: readonly FanCurvePoint[]): FanCurvePoint[] {
  return points.filter((point) => !point.extrapolated);
}

function leakRibbon(doubt: NonNullable<BuildCurves["leakUncertainty"]>, { x, y }: MatchContext): string {
  const pairs = doubt.less.map((point, i) => ({ less: point, more: doubt.more[i] }));
  return (
    area<(typeof pairs)[number]>()
      .x0(({ less }) => x(less.flow))
      .x1(({ more }) => x(more.flow))
      .y(({ less }) => y(less.pressure))(pairs) ?? ""
  );
}

/** Fan ribbon between full and cut-off charge with the charge shown in it; leak with its ribbon. */
export function curvesLayer(g: Group, curves: BuildCurves, context: MatchContext): void {
  const ring = [...curves.full, ...curves.cutOff.toReversed()];
  const doubt = curves.leakUncertainty;
  const marks: PathMark[] = [
    ...(doubt ? [{ key: "leak ribbon", d: leakRibbon(doubt, context), look: "leak-ribbon" }] : []),
    { key: "rotor ribbon", d: ring.length > 0 ? `${curvePath(ring, context)}Z` : "", look: "rotor-ribbon" },
    { key: "full", d: curvePath(curves.full, context), look: "rotor-edge" },
    { key: "cut-off", d: curvePath(curves.cutOff, context), look: "rotor-edge" },
    { key: "leak", d: curvePath(curves.leak, context), look: "leak-line" },
    { key: "rest beyond", d: curvePath(curves.rest, context), look: "rotor-line extrapolated" },
    { key: "rest", d: curvePath(tested(curves.rest), context), look: "rotor-line" },
  ];
  paths(g, marks, context);
}

/** The build as it was before anything was tried. */
export function ghostLayer(g: Group, ghost: BuildCurves | null, context: MatchContext): void {
  const marks = ghost
    ? [
        { key: "fan", d: curvePath(ghost.rest, context), look: "ghost-line" },
        { key: "leak", d: curvePath(ghost.leak, context), look: "ghost-line", dash: "9 4" },
      ]
    : [];
  paths(g, marks, context);
}
