import { worstName } from "../../../shared/decide/verdict/attitudeWords.ts";
import { marginText } from "../../../shared/decide/verdict/figures.ts";
import { formatFixed, formatQuantity, inUnit } from "../../../shared/units/format.ts";
import { firstInWords } from "../../ui/verdictWords.ts";
import type { Rose } from "./rose.ts";
import { type Need, STATES, type Stand, type State } from "./stand.ts";

/** @returns a force as the mass that weighs it [g] */
export function inGrams(newton: number): number {
  return inUnit(newton, "load");
}

/** @returns "893 g" */
export function grams(newton: number): string {
  return formatQuantity(newton, "load", { decimals: 0 });
}

/** @returns "128°", "153.5°": a decimal only where there is one */
export function degrees(angle: number): string {
  return `${formatFixed(angle, Number.isInteger(Number(angle.toFixed(1))) ? 0 : 1)}°`;
}

/** @returns "an overhang", "the wall" */
export function kindOf(angle: number): string {
  const name = worstName(angle);
  if (name === "the overhang") return "an overhang";
  return name === "the slope" ? "a slope" : name;
}

/** @returns how the lip stands at a limit: "gap 0.74 mm there", or that the skirt touches */
export function gapAtLimit(gap: number): string {
  return gap === 0 ? "the skirt touches there" : `gap ${formatQuantity(gap, "length")} there`;
}

/** @returns what is needed, in words: "893 g", "none", "no pull suffices" */
export function needText({ pull }: Need): string {
  if (pull === 0) return "none";
  return Number.isFinite(pull) ? grams(pull) : "no pull suffices";
}

/** @returns the pull made, with the range that 90 % of the samples lie in */
export function madeText({ made, spread }: Rose): string {
  if (!spread) return `It makes ${grams(made)}.`;
  return `It makes ${grams(made)}, very likely ${grams(spread.less)} to ${grams(spread.more)}.`;
}

/** @returns what the band round the arc and the percentages are; nothing where there are none */
export function bandText({ spread }: Rose): string {
  if (!spread) return "";
  return "The band round the arc holds 90\u202f% of the samples of the pull made; a percentage beside a name, where there is room for it, is the share of them whose pull is enough there, parked.";
}

function stateText(need: Need): string {
  if (need.pull === 0) return "no pull";
  if (!Number.isFinite(need.pull)) return "more than any pull can do";
  return `${grams(need.pull)} (${marginText(need.margin)}, ${firstInWords(need.modes)} first)`;
}

/** @returns one attitude under the pointer, a line each */
export function standLines({ angle, ...needs }: Stand, { made }: Pick<Rose, "made">): string[] {
  const line = (state: State) => {
    const need = needs[state];
    const known = need.pull > 0 && Number.isFinite(need.pull);
    const first = known ? ` (${marginText(need.margin)}, ${firstInWords(need.modes)} first)` : "";
    return `Needed ${state}: ${needText(need)}${first}`;
  };
  return [`${degrees(angle)}, ${kindOf(angle)}`, ...STATES.map(line), `Made: ${grams(made)}`];
}

/** @returns the answer for any one attitude */
export function standSentence({ angle, parked, driving }: Stand, made: number): string {
  return `At ${degrees(angle)}, ${kindOf(angle)}, it needs ${stateText(parked)} parked and ${stateText(driving)} driving nose uphill; it makes ${grams(made)}.`;
}

/** @returns where it needs most, parked and driving, and what it makes */
export function figures(rose: Rose): string {
  const { parked, driving } = rose.worst;
  const at = (stand: Stand) => degrees(Math.round(stand.angle));
  const most =
    parked.parked.pull === 0
      ? "Parked it needs no pull anywhere. "
      : `Parked it needs most at ${at(parked)}: ${stateText(parked.parked)}. `;
  return `${most}Driving nose uphill is hardest at ${at(driving)}: ${stateText(driving.driving)}. ${madeText(rose)}`;
}

/** Stretches of attitudes, whole degrees, on which more is needed than the drawing's rim. */
export function beyondRim({ stands, rim }: Rose): string | null {
  const over = stands.filter((stand) => stand.driving.pull > rim).map((stand) => stand.angle);
  if (over.length === 0) return null;
  return `Between ${over[0]}° and ${over.at(-1)}° driving needs more than the rim shows; the table has it.`;
}

/** @returns what the picture shows, for those who don't see it */
export function roseSentence(rose: Rose): string {
  const { worst, made, outcome } = rose;
  return `Half-rose of the pull ${outcome.build.name} needs, from floor over wall to ceiling, against the ${grams(made)} it makes. Parked it needs most at ${degrees(Math.round(worst.parked.angle))}: ${needText(worst.parked.parked)}; driving at ${degrees(Math.round(worst.driving.angle))}: ${needText(worst.driving.driving)}.`;
}
