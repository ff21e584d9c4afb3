import type { Mode } from "../../physics/hold/holdAt.ts";
import { formatQuantity } from "../../units/format.ts";
import { listed, listedAttitudes, worstName } from "./attitudeWords.ts";
import {
  degreesText,
  marginText,
  pairText,
  percentText,
  pullText,
  rpmText,
  targetText,
  temperaturePair,
  timeText,
} from "./figures.ts";
import type { HeldAttitude, Least } from "./findings.ts";
import { atCharge, nearestText, notJudgedText, ratingText } from "./ratingWords.ts";
import type { VerdictState } from "./states.ts";
import { type Reason, SURE, type Verdict } from "./verdict.ts";

const PERCENT = 100;

type Of<K extends Reason["kind"]> = Extract<Reason, { readonly kind: K }>;

/** An attitude in a sentence: "the roof pane", "the overhang at 128°". */
function placeText({ name, angle }: Pick<HeldAttitude, "name" | "angle">): string {
  if (name !== "") return name;
  const own = worstName(angle);
  return own === "the overhang" || own === "the slope" ? `${own} at ${degreesText(angle)}` : own;
}

const places = (attitudes: readonly HeldAttitude[], joint?: string) =>
  listedAttitudes(attitudes.map(placeText), joint);

function burstSentence({ burstSpeed, share, speed }: Of<"burst">, charge: number | null): string {
  return `Bursts on the way up: the rotor reaches its strength at ${rpmText(burstSpeed)}, ${percentText(share)} of the ${rpmText(speed)} it would reach${atCharge(charge)}.`;
}

function burnSentence({ temperature, limit, usual, after }: Of<"winding">, charge: number | null): string {
  const [settles, allowed] = temperaturePair(temperature, limit);
  const against = usual
    ? `common wire takes ${allowed}, and the motor's own limit isn't known`
    : `its limit is ${allowed}`;
  const when = after === null ? "" : ` It passes that ${timeText(after)} after a cold start.`;
  return `Burns: the winding settles at ${settles}${atCharge(charge)}, ${against}.${when}`;
}

function marginsSentence({ lost, unclimbed, kept }: Of<"margins">): string {
  const climbs = unclimbed.length > 0 ? `can't climb ${places(unclimbed, "or")}` : "";
  if (lost.length === 0) return `Can${climbs.slice("can".length)}; parked it holds everywhere it has to go.`;
  const also = climbs ? ` It ${climbs}.` : "";
  if (kept.length === 0) return `Falls: the pull is too small for ${places(lost)}.${also}`;
  return `Falls from ${places(lost)}; it holds ${places(kept)}.${also}`;
}

function jointSentence({ crossing: { joint, way }, least: { driving, governs, name } }: Of<"joint">): string {
  const climbs = driving && governs.includes("climb");
  const met = way === "along" ? "with a side of the lip along it" : "where the lip crosses it";
  const deep = `${formatQuantity(joint.depth, "length", { decimals: 2 })} deep`;
  const place = `${name} (${deep}, ${met})`;
  return climbs
    ? `Can't climb ${place}; beside it, it holds everywhere it has to go.`
    : `Falls from ${place}; beside it, it holds everywhere it has to go.`;
}

function chanceSentence({ chance: { name, holds } }: Of<"chance">): string {
  const [has, wanted] = pairText(PERCENT * holds, PERCENT * SURE, "%", 0);
  return `Not sure: the chance of holding on ${name} is ${has}, ${wanted} is sure.`;
}

function tightest(least: Least | null): string {
  return least ? `; ${least.name} is the tightest` : " without any pull";
}

/**
 * A verdict's sentence, its state first.
 *
 *     the reason in words, with its figures
 *
 * @param verdict - from {@link verdictOf}
 * @returns one sentence, a second where a time or a climb belongs to it [-]
 *
 * Valid for any verdict; shown units are the bench's own
 */
export function sentenceOf({ reason, least, fromCharge }: Verdict): string {
  switch (reason.kind) {
    case "burst":
      return burstSentence(reason, fromCharge);
    case "winding":
      return burnSentence(reason, fromCharge);
    case "standing":
      return "Falls: the rotor comes to no steady speed, so nothing is held.";
    case "margins":
      return marginsSentence(reason);
    case "joint":
      return jointSentence(reason);
    case "ratings":
      return `Over a rating: ${listed(reason.limits.map((limit) => ratingText(limit, fromCharge)))}.`;
    case "target":
      return `Holds everywhere it has to go, with less to spare on ${least?.name} than the ${targetText(reason.target)} wanted.`;
    case "contradiction":
      return "Not sure: tests that this is based on contradict each other or the model.";
    case "chance":
      return chanceSentence(reason);
    case "holds":
      return `Holds everywhere it has to go${tightest(least)}.`;
  }
}

/** @returns a state in a word or three, where its reason isn't at hand */
export function stateName(state: VerdictState): string {
  return state === "over-rating" ? "over a rating" : state;
}

/** @returns the state in a word or two, for lists and comparisons */
export function stateWords({ state, reason }: Pick<Verdict, "state" | "reason">): string {
  if (reason.kind === "margins" && reason.lost.length === 0) return "can't climb";
  if (reason.kind === "joint") return "falls over a joint";
  return stateName(state);
}

const MODE_WORDS: Readonly<Record<Mode, string>> = {
  liftOff: "lifts off",
  slide: "slips",
  tip: "tips",
  climb: "can't climb",
};

/** @returns what ends the hold first, in words: "slips", "lifts off and slips" */
export function firstWords(modes: readonly Mode[]): string {
  return listed(modes.map((mode) => MODE_WORDS[mode]));
}

function leastText({ angle, margin, driving, governs }: Least, suction: number): string {
  const climbs = driving && governs.includes("climb");
  const first = `${driving ? "Driving up" : "Parked"}, it ${firstWords(governs)} first, at`;
  const needed =
    margin > 0 ? `: ${pullText(suction / margin)} of pull needed, ${pullText(suction)} made` : "";
  return `${climbs ? "The climb is hardest at" : first} ${degreesText(angle)}${needed}.`;
}

/**
 * What stands under a verdict's sentence: what ends the hold first, what comes nearest to a limit, what isn't judged.
 *
 *     F_needed = F_s/margin
 *
 * @param verdict - from {@link verdictOf}
 * @returns up to three sentences; margins only where the build lasts to make use of them [-]
 *
 * Valid for any verdict
 */
export function detailOf(verdict: Verdict): string {
  const { state, reason, least, suction, nearest, notJudged, fromCharge } = verdict;
  const lasts = state !== "bursts" && state !== "burns";
  const turns = reason.kind !== "standing";
  const falls = least !== null && least.margin < 1;
  const also = state === "burns" && falls ? "The pull is too small as well. " : "";
  const first = turns && least && (lasts || also) ? also + leastText(least, suction) : "";
  const near = lasts && state !== "over-rating" ? nearestText(nearest, fromCharge) : "";
  const messages = reason.kind === "contradiction" ? reason.messages.join(" ") : "";
  return [messages, first, near, notJudgedText(notJudged)].filter(Boolean).join(" ");
}

/** The figure that decides, and what it is of. */
export interface Figure {
  readonly value: string;
  readonly of: string;
}

/**
 * The figure that decides a verdict.
 *
 *     bursts: ω_burst/ω;  burns: T;  over a rating: value/limit;  unsure by chance: chance of holding;  else the least margin
 *
 * @param verdict - from {@link verdictOf}
 * @returns the figure and what it is of; null where there is none [-]
 *
 * Valid for any verdict
 */
export function figureOf({ reason, least }: Verdict): Figure | null {
  switch (reason.kind) {
    case "burst":
      return { value: percentText(reason.share), of: "of its speed, and the rotor bursts" };
    case "winding": {
      const [value, allowed] = temperaturePair(reason.temperature, reason.limit);
      return { value, of: `in the winding, ${allowed} allowed` };
    }
    case "ratings": {
      const ratio = reason.limits[0]?.ratio ?? null;
      return ratio === null || !Number.isFinite(ratio)
        ? null
        : { value: percentText(ratio), of: "of the way to the limit" };
    }
    case "chance":
      return { value: percentText(reason.chance.holds), of: "chance of holding" };
    default:
      return least && { value: marginText(least.margin), of: `the pull needed on ${least.name}` };
  }
}
