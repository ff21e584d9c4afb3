import type { Quantiles } from "../../../../shared/decide/uncertainty.ts";
import { pullText } from "../../../../shared/decide/verdict/figures.ts";
import type { ThrustCurvePoint } from "../../../../shared/physics/propellerLaw.ts";
import { inUnit } from "../../../../shared/units/format.ts";
import { headed } from "../../../../shared/units/showing.ts";
import type { Line, Plot, Point, Ring } from "../../../charts/model/plot.ts";
import { neededLevel } from "../levelWords.ts";
import { crosses } from "../matchPlot.ts";
import type { Overlay } from "../overlays.ts";
import type { ChargeMark, ThrustPicture } from "./picture.ts";
import { rpmText } from "./thrustWords.ts";

/** Another build whose thrust is laid over. */
export type ThrustOverlay = Omit<Overlay, "picture"> & { readonly picture: ThrustPicture };

/** What the chart of thrust against speed shows. */
export interface ThrustDrawing {
  readonly picture: ThrustPicture;
  /** the build as it stands, while something is tried */
  readonly ghost: ThrustPicture | null;
  readonly overlays: readonly ThrustOverlay[];
  /** direct label of the curve: the propeller, its size */
  readonly label: readonly [string, string];
  /** of the thrust [N]; null while nothing is sampled */
  readonly spread: Quantiles | null;
  /** how long curves glide [ms] */
  readonly duration: number;
}

const CHARGE_WORDS = { full: "full charge", cutOff: "cut-off" } as const;
/** Where along the curve its name is tried. */
const ALONG = [0.8, 0.9, 0.7, 0.62, 0.55, 0.45, 0.3];
/** Charges nearer to each other than this share of the speeds shown are told by one name [-]. */
const APART = 0.03;

const pullShown = (force: number) => inUnit(force, "load");
const speedShown = (speed: number) => inUnit(speed, "speed");
const place = ({ speed, thrust }: { readonly speed: number; readonly thrust: number }): Point => ({
  x: speedShown(speed),
  y: pullShown(thrust),
});
const markOf = ({ marks }: ThrustPicture, key: ChargeMark["key"]) => marks.find((mark) => mark.key === key);

/** From cut-off to full charge: the stretch of the curve on which the build lives. */
function livedOn(picture: ThrustPicture): { readonly speed: number; readonly thrust: number }[] {
  const [full, cutOff] = [markOf(picture, "full"), markOf(picture, "cutOff")];
  if (!full || !cutOff) return [];
  const between = picture.curve.filter(({ speed }) => speed > cutOff.speed && speed < full.speed);
  return [cutOff, ...between, full];
}

function linesOf({ picture, ghost, overlays, label }: ThrustDrawing): Line[] {
  const line = (
    key: string,
    points: readonly Pick<ThrustCurvePoint, "speed" | "thrust">[],
    look: Omit<Line, "key" | "points">,
  ): Line => ({ key, points: points.map(place), ...look });
  const name = { lines: [label.join(", ")], short: label, along: ALONG };
  return [
    ...(ghost ? [line("ghost", ghost.curve, { tone: "quiet", style: "solid", weight: "fine" })] : []),
    line("ribbon", livedOn(picture), { tone: "rotor", style: "solid", weight: "broad" }),
    line("beyond", picture.curve, { tone: "rotor", style: "dashed", name }),
    line(
      "tested",
      picture.curve.filter(({ extrapolated }) => !extrapolated),
      { tone: "rotor", style: "solid" },
    ),
    ...overlays.map(({ id, dash, picture: other }) =>
      line(`over ${id}`, other.curve, { tone: "rotor", style: { dash } }),
    ),
  ];
}

/** What stands where the propeller settles at the charge shown. */
function restLines({ speed, thrust, extrapolated }: ChargeMark): string[] {
  return [`${pullText(thrust)} of pull`, rpmText(speed), ...(extrapolated ? ["extrapolated"] : [])];
}

function chargeRings({ marks, mostSpeed }: ThrustPicture, rest: ChargeMark | undefined): Ring[] {
  return marks.flatMap((mark): Ring[] => {
    const near = rest && Math.abs(mark.speed - rest.speed) < APART * mostSpeed;
    if (mark.key === "rest" || near) return [];
    return [{ key: mark.key, ...place(mark), look: "before", name: { lines: [CHARGE_WORDS[mark.key]] } }];
  });
}

function ringsOf({ picture, ghost, overlays }: ThrustDrawing): Ring[] {
  const rest = markOf(picture, "rest");
  const before = ghost && markOf(ghost, "rest");
  return [
    ...(rest
      ? [
          {
            key: "point",
            ...place(rest),
            look: "predicted",
            name: { lines: restLines(rest) },
          } satisfies Ring,
        ]
      : []),
    ...chargeRings(picture, rest),
    ...overlays.flatMap(({ id, letter, name, picture: other }): Ring[] => {
      const at = markOf(other, "rest");
      const named = { lines: [`${letter} ${name}`] };
      return at ? [{ key: `over ${id}`, ...place(at), look: "before", letter, name: named }] : [];
    }),
    ...(before
      ? [{ key: "ghost", ...place(before), look: "before", name: { lines: ["as it was"] } } satisfies Ring]
      : []),
  ];
}

/** Pull against speed of a propeller: where its motor settles, and what each attitude needs. */
export function thrustPlot(drawing: ThrustDrawing): Plot {
  const { picture, ghost, overlays, spread } = drawing;
  const all = [picture, ...(ghost ? [ghost] : []), ...overlays.map((overlay) => overlay.picture)];
  const rest = markOf(picture, "rest");
  const { p5, p95 } = spread ?? { p5: null, p95: null };
  return {
    x: {
      label: headed("speed", "speed"),
      from: 0,
      to: speedShown(Math.max(...all.map(({ mostSpeed }) => mostSpeed))),
    },
    y: {
      label: headed("pull", "load"),
      from: 0,
      to: pullShown(Math.max(...all.map(({ mostForce }) => mostForce))),
    },
    lines: linesOf(drawing),
    levels: picture.levels.map((level) => neededLevel(level, pullShown(level.pressure), level.pressure)),
    marks: crosses(picture.measured, ({ flow, pressure }) => place({ speed: flow, thrust: pressure })),
    spreads:
      rest && p5 !== null && p95 !== null
        ? [{ key: "point", at: place(rest), y: [pullShown(p5), pullShown(p95)] }]
        : [],
    rings: ringsOf(drawing),
    motion: drawing.duration,
  };
}
