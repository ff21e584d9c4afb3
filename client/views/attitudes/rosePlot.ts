import type { Mode } from "../../../shared/physics/hold/holdAt.ts";
import { headed } from "../../../shared/units/showing.ts";
import type { Line, Point, Ring, Stop } from "../../charts/model/plot.ts";
import type { PolarPlot, RimName, Sector, Spoke } from "../../charts/model/polar.ts";
import { sureText } from "../../ui/uncertaintyWords.ts";
import { firstInWords } from "../../ui/verdictWords.ts";
import { degrees, grams, inGrams } from "./attitudeWords.ts";
import type { NamedStand, Rose } from "./rose.ts";
import { STATES, type Stand, type State } from "./stand.ts";

const HALF_TURN = 180;
const DEGREES = Array.from({ length: HALF_TURN + 1 }, (_, i) => i);
/** Places along a curve where its name is tried, as shares of it: nearest to the floor first. */
const ALONG = Array.from({ length: 44 }, (_, i) => (i + 1) / 45);

const LOOK: Readonly<Record<Mode, Pick<Sector, "tone" | "style" | "weight">>> = {
  liftOff: { tone: "ink", style: "solid" },
  slide: { tone: "needed", style: "solid" },
  tip: { tone: "leak", style: "solid" },
  climb: { tone: "quiet", style: "long" },
};
const NO_PULL = { tone: "quiet", style: "solid", weight: "fine" } as const;
const NEED: Readonly<Record<State, Pick<Line, "style">>> = {
  parked: { style: "dots" },
  driving: { style: "long" },
};

const round = (pull: number): Point[] => DEGREES.map((angle) => ({ x: angle, y: inGrams(pull) }));

/** Out of the centre and back into it; a need beyond the rim, or without end, breaks the line. */
function needed({ stands }: Rose, state: State): Line {
  const points = stands.map((stand) => ({ x: stand.angle, y: inGrams(stand[state].pull) }));
  return {
    key: state,
    tone: "needed",
    ...NEED[state],
    points: [{ x: 0, y: 0 }, ...points, { x: HALF_TURN, y: 0 }],
    name: { lines: [`needed ${state}`], along: ALONG },
  };
}

function made({ made: pull }: Rose): Line[] {
  if (!(pull > 0)) return [];
  const name = { lines: [`made ${grams(pull)}`], along: ALONG };
  return [{ key: "made", tone: "rotor", style: "solid", points: round(pull), name }];
}

function spokesOf({ named }: Rose, asked: Stand | null): Spoke[] {
  const spokes = named.map(
    ({ key, kind, stand }): Spoke => ({
      key,
      angle: stand.angle,
      tone: kind === "standard" ? "quiet" : "ink",
      style: "solid",
      weight: kind === "worst" ? "normal" : "fine",
    }),
  );
  return asked
    ? [...spokes, { key: "asked", angle: asked.angle, tone: "needed", style: "solid", weight: "normal" }]
    : spokes;
}

/** The worst attitudes on their curves, the one asked about on the curve of driving. */
function ringsOf({ named }: Rose, asked: Stand | null): Ring[] {
  const worst = named.flatMap(({ key, kind, stand }): Ring[] => {
    const { pull } = stand[key === "worst" ? "parked" : "driving"];
    return kind === "worst" && pull > 0 ? [{ key, x: stand.angle, y: inGrams(pull), look: "predicted" }] : [];
  });
  return asked
    ? [...worst, { key: "asked", x: asked.angle, y: inGrams(asked.driving.pull), look: "before" }]
    : worst;
}

const sectorsOf = ({ sectors }: Rose): Sector[] =>
  STATES.flatMap((state, ring) =>
    sectors[state].map(({ from, to, mode }) => ({
      key: `${state} ${mode} ${from}`,
      from,
      to,
      ring,
      ...(mode === null ? NO_PULL : LOOK[mode]),
    })),
  );

function attitudeName({ key, title, kind, stand, sure }: NamedStand): RimName {
  const angle = kind === "worst" ? Math.round(stand.angle) : stand.angle;
  return {
    key,
    title,
    tail: ` ${degrees(angle)}`,
    more: sure && stand.parked.pull > 0 ? `, ${sureText(sure.parked.holds)}` : "",
    tone: "ink",
    strong: kind === "worst",
    angle: stand.angle,
    ring: null,
  };
}

function rimNamesOf({ named, sectors }: Rose, asked: Stand | null): RimName[] {
  const modes = STATES.flatMap((state, ring) =>
    sectors[state].map(
      ({ from, to, mode }): RimName => ({
        key: `${state} ${mode} ${from}`,
        title: mode === null ? "no pull" : firstInWords([mode]),
        tail: `, ${state}`,
        tone: "quiet",
        angle: (from + to) / 2,
        ring,
      }),
    ),
  );
  const own = asked && {
    key: "asked",
    title: "asked",
    tail: ` ${degrees(asked.angle)}`,
    tone: "needed" as const,
    angle: asked.angle,
    ring: null,
  };
  return [...named.map(attitudeName), ...modes, ...(own ? [own] : [])];
}

/** Every whole degree, and the attitudes with a name or asked about that lie between; read on the arc of the pull made. */
function stopsOf({ made: pull, rim, named }: Rose, asked: Stand | null): Stop[] {
  const between = [
    ...named.filter(({ kind }) => kind === "own").map(({ stand }) => stand),
    asked ?? [],
  ].flat();
  const angles = new Set([...DEGREES, ...between.map(({ angle }) => angle)]);
  const y = inGrams(pull > 0 ? pull : rim);
  return [...angles].sort((a, b) => a - b).map((angle) => ({ key: String(angle), x: angle, y }));
}

/**
 * The half-rose: pull needed against pull made, from floor over wall to ceiling.
 *
 * @param asked - the attitude asked about, where one is
 */
export function rosePlot(rose: Rose, asked: Stand | null): PolarPlot {
  const { spread, rim } = rose;
  const band = spread && {
    key: "made",
    tone: "rotor" as const,
    strength: "mean" as const,
    edges: DEGREES.map(
      (x) =>
        [
          { x, y: inGrams(spread.less) },
          { x, y: inGrams(spread.more) },
        ] as const,
    ),
  };
  return {
    axis: { label: headed("pull", "load"), to: inGrams(rim) },
    ribbons: band ? [band] : [],
    lines: [needed(rose, "parked"), needed(rose, "driving"), ...made(rose)],
    rings: ringsOf(rose, asked),
    spokes: spokesOf(rose, asked),
    sectors: sectorsOf(rose),
    rimNames: rimNamesOf(rose, asked),
    stops: stopsOf(rose, asked),
  };
}
