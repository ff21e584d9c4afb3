import type { Group } from "../../../charts/frame.ts";
import type { Obstacle } from "../../../charts/place.ts";
import type { MatchContext } from "../layers/context.ts";
import { along, around, drawNames, type Name } from "../layers/names.ts";
import type { ThrustDrawing } from "./drawing.ts";
import type { ChargeMark, ThrustPicture } from "./picture.ts";
import { grams, rpmText } from "./thrustWords.ts";

const CHARGE_WORDS = { full: "full charge", rest: "", cutOff: "cut-off" } as const;
/** Charges nearer to each other than this are told by one label [px]. */
const APART = 14;

function restName({ marks }: ThrustPicture, { x, y }: MatchContext): Name[] {
  const rest = marks.find((mark) => mark.key === "rest");
  if (!rest) return [];
  const lines = [
    `${grams(rest.thrust)} g · ${rpmText(rest.speed)}`,
    ...(rest.extrapolated ? ["extrapolated"] : []),
  ];
  const anchor = { x: x(rest.speed), y: y(rest.thrust) };
  return [{ key: "point", lines, tone: "strong-text", anchor, spots: around(anchor, lines), led: true }];
}

function chargeNames({ marks }: ThrustPicture, { x, y }: MatchContext): Name[] {
  const rest = marks.find((mark) => mark.key === "rest");
  const far = (mark: ChargeMark) =>
    !rest || Math.hypot(x(mark.speed) - x(rest.speed), y(mark.thrust) - y(rest.thrust)) > APART;
  return marks
    .filter((mark) => mark.key !== "rest" && far(mark))
    .map((mark) => {
      const anchor = { x: x(mark.speed), y: y(mark.thrust) };
      const lines = [CHARGE_WORDS[mark.key]];
      return { key: mark.key, lines, tone: "rotor-text", anchor, spots: around(anchor, lines), led: true };
    });
}

function curveName(
  { curve }: ThrustPicture,
  label: readonly [string, string],
  context: MatchContext,
): Name[] {
  const points = curve.map(({ speed, thrust }) => ({ flow: speed, pressure: thrust }));
  const end = points[points.length - 1];
  const anchor = { x: context.x(end.flow), y: context.y(end.pressure) };
  const lines = context.wide ? [label.join(", ")] : label;
  const spots = along(points, [0.8, 0.9, 0.7, 0.62, 0.55, 0.45, 0.3], lines, context);
  return [{ key: "curve", lines, tone: "rotor-text", anchor, spots, led: false }];
}

function otherNames({ ghost, overlays }: ThrustDrawing, { x, y }: MatchContext): Name[] {
  const named = [
    ...overlays.map(({ id, letter, name, picture }) => ({ key: id, text: `${letter} ${name}`, picture })),
    ...(ghost ? [{ key: "ghost", text: "as it was", picture: ghost }] : []),
  ];
  return named.flatMap(({ key, text, picture }) => {
    const rest = picture.marks.find((mark) => mark.key === "rest");
    if (!rest) return [];
    const anchor = { x: x(rest.speed), y: y(rest.thrust) };
    return [{ key, lines: [text], tone: "quiet-text", anchor, spots: around(anchor, [text]), led: true }];
  });
}

function obstaclesOf({ curve, measured, levels }: ThrustPicture, { x, y, width }: MatchContext): Obstacle[] {
  return [
    ...curve.map(({ speed, thrust }): Obstacle => [x(speed), y(thrust)]),
    ...measured.map((point): Obstacle => [x(point.flow), y(point.pressure)]),
    ...levels.flatMap((level) =>
      [0.05, 0.25, 0.5, 0.75, 0.95].map((share): Obstacle => [share * width, y(level.pressure)]),
    ),
  ];
}

/** Direct labels: where it settles, at full and cut-off charge, the propeller's name, ghost and laid-over builds. */
export function thrustNames(g: Group, drawing: ThrustDrawing, context: MatchContext): void {
  const { picture } = drawing;
  const names = [
    ...restName(picture, context),
    ...curveName(picture, drawing.label, context),
    ...chargeNames(picture, context),
    ...otherNames(drawing, context),
  ];
  drawNames(g, names, obstaclesOf(picture, context), context);
}
