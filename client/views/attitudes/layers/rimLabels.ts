import { pushApart } from "../../../charts/draw/pushApart.ts";
import type { Group } from "../../../charts/frame.ts";
import { clippedText } from "../../../charts/place.ts";
import { sureText } from "../../../ui/uncertaintyWords.ts";
import { governsInWords } from "../../../ui/verdictWords.ts";
import { degrees } from "../attitudeWords.ts";
import type { NamedStand, Rose } from "../rose.ts";
import type { Sector } from "../sectors.ts";
import { STATES, type Stand, type State } from "../stand.ts";
import { type PolarContext, spot } from "./polar.ts";
import { RING } from "./rings.ts";

interface RimLabel {
  readonly key: string;
  readonly text: string;
  /** end of the text that is kept where a long name is cut */
  readonly tail: string;
  readonly angle: number;
  /** from where the hairline starts, beyond the rim [px] */
  readonly from: number;
  readonly tone: string;
}

const LINE = 16;
const BASELINE = 4;
/** Labels stand this far outside the rim [px]. */
const AWAY = 32;
const BEFORE_TEXT = 3;

/** Room beside the rim from which on a name leaves some for a percentage [px]. */
const ROOM_FOR_SURE = 200;

function sureOf({ sure, stand }: NamedStand, beside: number): string {
  const shown = sure && stand.parked.pull > 0 && beside >= ROOM_FOR_SURE;
  return shown ? `, ${sureText(sure.parked.holds)}` : "";
}

function attitude(named: NamedStand, beside: number): RimLabel {
  const { key, title, kind, stand } = named;
  const tail = ` ${degrees(kind === "worst" ? Math.round(stand.angle) : stand.angle)}${sureOf(named, beside)}`;
  return {
    key,
    text: `${title}${tail}`,
    tail,
    angle: stand.angle,
    from: 0,
    tone: kind === "worst" ? "strong-text" : "",
  };
}

function sector(state: State, { from, to, mode }: Sector): RimLabel {
  const tail = ` ${state}`;
  return {
    key: `${state} ${mode} ${from}`,
    text: `${mode === null ? "no pull" : governsInWords([mode])},${tail}`,
    tail,
    angle: (from + to) / 2,
    from: RING[state],
    tone: "quiet-text",
  };
}

function labelsOf(rose: Rose, asked: Stand | null, beside: number): RimLabel[] {
  return [
    ...rose.named.map((named) => attitude(named, beside)),
    ...STATES.flatMap((state) => rose.sectors[state].map((each) => sector(state, each))),
    ...(asked
      ? [
          {
            key: "asked",
            text: `asked ${degrees(asked.angle)}`,
            tail: ` ${degrees(asked.angle)}`,
            angle: asked.angle,
            from: 0,
            tone: "needed-text",
          },
        ]
      : []),
  ];
}

/** Bold type runs wider [-]. */
const BOLD = 1.08;

/** Cuts a long name so that it fits, what stands behind it kept. */
function fitted({ text, tail, tone }: RimLabel, space: number): string {
  const room = tone === "strong-text" ? space / BOLD : space;
  return clippedText(text, tail, room);
}

interface Placed extends RimLabel {
  readonly x: number;
  readonly y: number;
}

/** Names of attitudes and sectors round the rim, pushed apart, each led to its place by a hairline. */
export function rimLabelsLayer(g: Group, rose: Rose, asked: Stand | null, context: PolarContext): void {
  const { radius, beside } = context;
  const labels = labelsOf(rose, asked, beside);
  const outer = radius + AWAY;
  const wanted = labels.map((label) => ({ at: spot(label.angle, outer)[1], size: LINE }));
  const centres = pushApart(wanted, -outer, outer);
  const placed: Placed[] = labels.map((label, i) => {
    const nearest = Math.max(0, Math.abs(centres[i]) - LINE / 2);
    return { ...label, y: centres[i], x: Math.sqrt(Math.max(0, outer ** 2 - nearest ** 2)) };
  });
  g.selectAll<SVGPathElement, Placed>(".leader")
    .data(placed, (label) => label.key)
    .join("path")
    .attr("class", "leader")
    .attr("d", (label) => `M${spot(label.angle, radius + label.from)}L${label.x},${label.y}`);
  g.selectAll<SVGTextElement, Placed>("text")
    .data(placed, (label) => label.key)
    .join("text")
    .attr("class", (label) => label.tone)
    .attr("x", (label) => label.x + BEFORE_TEXT)
    .attr("y", (label) => label.y + BASELINE)
    .text((label) => fitted(label, radius + beside - label.x - BEFORE_TEXT));
}
