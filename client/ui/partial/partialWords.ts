import type { Unknown } from "../../../shared/book/resolve.ts";
import { listed } from "../../../shared/decide/verdict/attitudeWords.ts";
import { marginText } from "../../../shared/decide/verdict/figures.ts";
import { worstAngle } from "../../../shared/physics/hold/worst.ts";
import { RPM } from "../../../shared/physics/motor.ts";
import type {
  FrictionNeeded,
  PartialHold,
  PartialMoment,
} from "../../../shared/physics/partial/partialAnswer.ts";
import { formatFixed, formatQuantity, THIN_SPACE } from "../../../shared/units/format.ts";
import { type Known, leading, type Named } from "./known.ts";

/** A pull, what makes it, and what it holds. */
export type Pulled = Pick<PartialMoment, "suction" | "pressure" | "rpm" | "holds">;

/** @returns "893 g" */
export function grams(newton: number): string {
  return formatQuantity(newton, "load", { decimals: 0 });
}

/** @returns a friction that would do, never rounded to one that would not: "0.43" */
export function frictionText(least: number): string {
  return formatFixed(Math.ceil(least * 100 - 1e-9) / 100, 2);
}

/** @returns "1.5 ×" */
export function timesText(margin: number): string {
  return `${formatFixed(margin, Number.isInteger(margin * 10) ? 1 : 2)}${THIN_SPACE}×`;
}

/** @returns "24 000 rpm" */
export function rpmText(rpm: number): string {
  return formatQuantity(rpm * RPM, "speed", { decimals: 0 });
}

/** @returns the least voltage of a cell under load, "3.00 V" */
export function minimumText(cell: number): string {
  return `${formatFixed(cell, 2)}${THIN_SPACE}V`;
}

/** @returns the pull and what makes it: "893 g of pull at 1.21 kPa" */
export function pullText({ suction, pressure, rpm }: Pulled): string {
  const at = pressure === null ? rpmText(rpm) : formatQuantity(pressure, "pressure");
  return `${grams(suction)} of pull at ${at}`;
}

/** The speed is said beside it. */
const testedText = (at: Pulled): string =>
  at.pressure === null ? `${grams(at.suction)} of pull` : pullText(at);

/** @returns under which circumstance the pull is made, as a sentence begins */
export function leadText(known: Known, at: Pulled): string {
  if (!known.coupled) return `Turned at ${rpmText(at.rpm)} as in its tests, it makes ${testedText(at)}`;
  if (known.cellMinimum === null) return `It makes ${pullText(at)}`;
  return `With its cells at their minimum of ${minimumText(known.cellMinimum)} under load, it makes ${pullText(at)}`;
}

/** An attitude that the build must hold, with what is known of it there; the floor is left out. */
function asked(known: Known, { holds }: Pulled): { named: Named; hold: PartialHold }[] {
  return known.named.flatMap((named) => {
    const hold = holds.find(({ angle }) => angle === named.angle);
    return hold && named.angle > 0 ? [{ named, hold }] : [];
  });
}

/** @returns whether it lifts off or tips, however well its wheels grip */
export function fallsAnyway({ gripless }: PartialHold): boolean {
  return gripless !== null && gripless < 1;
}

const namesOf = (each: readonly { named: Named }[], joint = "and") =>
  listed(
    each.map(({ named }) => named.name),
    joint,
  );

/** What a pull holds, its friction known. */
function verdictText(known: Known, at: Pulled): string {
  const falls = ({ hold }: { hold: PartialHold }) => {
    const margin = hold.verdict?.parked.margin ?? null;
    return margin !== null && margin < 1;
  };
  const all = asked(known, at);
  const lost = all.filter(falls);
  if (lost.length === 0) return `: that holds ${namesOf(all)}.`;
  if (lost.length === all.length) return `: too little for ${namesOf(lost, "or")}.`;
  return `: that holds ${namesOf(all.filter((each) => !falls(each)))} but not ${namesOf(lost, "or")}.`;
}

/** @returns the least friction for holding, and for the margin wanted: "μ of at least 0.43, 0.65 for the 1.5 × you want" */
export function needsText({ holds, target }: FrictionNeeded, wanted: number): string | null {
  if (holds.parked === null) return null;
  const least = `μ of at least ${frictionText(holds.parked)}`;
  if (wanted === 1) return least;
  if (target.parked === null) return `${least}; none reaches the ${timesText(wanted)} you want`;
  return `${least}, ${frictionText(target.parked)} for the ${timesText(wanted)} you want`;
}

/** What a pull holds, its friction not known: what falls anyway, and the friction that the rest takes. */
function frictionlessText(known: Known, at: Pulled, then: string): string {
  const all = asked(known, at);
  const lost = all.filter(({ hold }) => fallsAnyway(hold));
  const falls = lost.length > 0 ? ` It falls from ${namesOf(lost, "and")} however well its wheels grip.` : "";
  const hardest = hardestOf(all);
  if (!hardest) return `.${falls}`;
  const where = lost.length > 0 ? "it slides elsewhere" : "it slides";
  const needs = hardest.hold.needs && needsText(hardest.hold.needs, known.build.targetMargin);
  return `.${falls} Whether ${where}${then} isn't known: parked on ${hardest.named.name} it needs ${needs}.`;
}

/** The attitude that takes most friction of those that some friction holds; null where none takes any. */
function hardestOf(all: readonly { named: Named; hold: PartialHold }[]) {
  const least = ({ hold }: { hold: PartialHold }) => hold.needs?.holds.parked ?? 0;
  return all.reduce<(typeof all)[number] | null>(
    (most, each) => (least(each) > (most ? least(most) : 0) ? each : most),
    null,
  );
}

/** @returns what a pull holds, as far as it can be said; follows the lead, which may speak of a later time: " then" */
export function holdText(known: Known, at: Pulled, then = ""): string {
  return known.unknown.includes("friction") ? frictionlessText(known, at, then) : verdictText(known, at);
}

/** @returns why there is no pull: nothing turns, or rotor and leak never meet */
export function nothingText({ coupled }: Known): string {
  return coupled
    ? "Falls: the rotor comes to no steady speed, so nothing is held."
    : "At the speeds of its tests the rotor finds no lasting point on this leak.";
}

/** @returns what can be said of "does it hold?", what is known first */
export function knownSentence(known: Known): string {
  const at = leading(known);
  return at ? `${leadText(known, at)}${holdText(known, at)}` : nothingText(known);
}

const UNKNOWN_WORDS: Readonly<Record<Unknown, string>> = {
  friction: "the friction of its wheels",
  charge: "its cells' voltage by charge",
  speed: "how fast the motor turns its rotor",
};

/** @returns "Not known: the friction of its wheels." */
export function unknownText({ unknown }: Pick<Known, "unknown">): string {
  return `Not known: ${listed(unknown.map((each) => UNKNOWN_WORDS[each]))}.`;
}

/** @returns what a view says of a build of which nothing can be said */
export function nothingSentence(name: string): string {
  return `${name} can't be answered for yet.`;
}

/** @returns under which circumstance a table's figures stand: "1503 g of pull at 1.65 kPa, cells at 3.00 V" */
export function circumstanceText(known: Known, at: Pulled): string {
  if (!known.coupled) return `At ${rpmText(at.rpm)}: ${testedText(at)}.`;
  const cells =
    known.cellMinimum === null ? "" : `, each cell at ${minimumText(known.cellMinimum)} under load`;
  return `${pullText(at)}${cells}.`;
}

/** @returns what can be said of "where does it need most?" */
export function anywhereSentence(known: Known): string {
  const at = leading(known);
  if (!at) return nothingText(known);
  const lead = leadText(known, at);
  if (!at.everywhere) return `${lead}${worstText(known, at)}`;
  const needs = needsText(at.everywhere, known.build.targetMargin);
  if (!needs) return `${lead}. From floor to ceiling no friction holds it: somewhere it lifts off or tips.`;
  return `${lead}. Whether it slides isn't known: parked anywhere from floor to ceiling it needs ${needs}.`;
}

/** Where it holds least, its friction known. */
function worstText({ vehicle }: Known, { suction }: Pulled): string {
  if (vehicle.wheelFriction === null) return ".";
  const { parked } = worstAngle({ ...vehicle, wheelFriction: vehicle.wheelFriction }, Math.max(0, suction));
  if (parked.margin === null) return "; parked it needs none anywhere.";
  const says = parked.margin < 1 ? "falls first" : "holds least";
  return `; parked it ${says} at ${parked.angle.toFixed(0)}°, with ${marginText(parked.margin)} the pull it needs there.`;
}
