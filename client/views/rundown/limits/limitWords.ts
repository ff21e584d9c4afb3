import type { Energy } from "../../../../shared/decide/limits/energies.ts";
import type { CautionKey, Limit, LimitKey } from "../../../../shared/decide/limits/limit.ts";
import type { Limits } from "../../../../shared/decide/limits/limits.ts";
import type { RotorFigures } from "../../../../shared/decide/limits/rotor.ts";
import { LEAST_SPEED_FACTOR } from "../../../../shared/physics/limits/disc.ts";
import { RPM } from "../../../../shared/physics/motor.ts";
import {
  decimalsFor,
  figureIn,
  formatFixed,
  formatQuantity,
  THIN_SPACE,
} from "../../../../shared/units/format.ts";

const PERCENT = 100;
const MINUTE = 60;
/** Speeds are shown to this many rpm. */
const RPM_STEP = 100;
/** Seconds are said up to so many [s]. */
const SECONDS = 120;

export const TITLES: Readonly<Record<LimitKey, string>> = {
  winding: "Winding, once settled",
  "motor-voltage": "Voltage at the motor",
  "motor-current": "Motor current",
  "cell-current": "Current of a cell",
  "cell-voltage": "Cell voltage under load",
  "rotor-speed": "Rotor speed",
};

/** What the limit is, before its figure. */
const LIMIT_NAMES: Readonly<Record<LimitKey, string>> = {
  winding: "limit",
  "motor-voltage": "rated",
  "motor-current": "at most",
  "cell-current": "at most",
  "cell-voltage": "at least",
  "rotor-speed": "not above",
};

export const ENERGY_TITLES: Readonly<Record<Energy["key"], string>> = {
  rotor: "Energy of the turning rotor",
  blade: "Energy of a blade that flies off",
  tenth: "Energy of a tenth of the rotor that flies off",
  fall: "Energy of the vehicle that falls",
};

/** The cautions of the trade, each where its limits stand. */
export const CAUTIONS: Readonly<Record<CautionKey, string>> = {
  motor:
    "Motors over their rated voltage overheat in seconds: pressure grows with the square, heat with about the cube of voltage or worse.",
  cells:
    "Lithium cells: charge attended, never below the maker's minimum, stop if swollen or hot, fire-safe place.",
  rotor:
    "Spinning rotors throw fragments: guard, goggles, stay out of the rotor's plane, first run-up behind a screen.",
  fall: "A vehicle on a wall or ceiling will fall when the charge ends: tether it, keep people, pets and traffic from under it, never above passers-by.",
};

export const GROUPS: readonly { readonly caution: CautionKey; readonly title: string }[] = [
  { caution: "motor", title: "Motor" },
  { caution: "cells", title: "Cells" },
  { caution: "rotor", title: "Rotor" },
  { caution: "fall", title: "Fall" },
];

/** @returns a sentence whose factors don't break from their sign at a line's end */
export function unbroken(sentence: string): string {
  return sentence.replaceAll(" × ", "\u00a0×\u00a0");
}

/** @returns a speed as shown: "29 800 rpm" */
export function rpmText(speed: number): string {
  return formatQuantity(Math.round(speed / RPM / RPM_STEP) * RPM_STEP * RPM, "speed", { decimals: 0 });
}

/** @returns a time as shown: "48 s", "3.4 min" */
export function timeText(time: number): string {
  if (time < SECONDS) return `${formatFixed(time, time < 10 ? 1 : 0)}${THIN_SPACE}s`;
  return `${formatFixed(time / MINUTE, 1)}${THIN_SPACE}min`;
}

function figure(key: LimitKey, value: number): string {
  if (key === "winding") return formatQuantity(value, "temperature", { decimals: 0 });
  if (key === "rotor-speed") return rpmText(value);
  if (key === "motor-voltage" || key === "cell-voltage") return `${formatFixed(value, 2)}${THIN_SPACE}V`;
  return `${formatFixed(value, 1)}${THIN_SPACE}A`;
}

/** @returns the figure as shown, "–" where it isn't known */
export function valueText({ key, value }: Limit): string {
  return value === null ? "–" : figure(key, value);
}

/** @returns what it must not pass: "limit 120 °C" */
export function limitText({ key, limit }: Limit): string {
  return limit === null ? "not known" : `${LIMIT_NAMES[key]} ${figure(key, limit)}`;
}

/** What bends a blade at its root; or that it is left out, and what would bring it in. */
function bendingText({ bending, stress }: RotorFigures): string {
  if (bending === null)
    return "Left out: the bending of the blades at their roots; height, thickness and exit angle of a free-standing blade, on the rotor's page, bring it in.";
  const first = bending === stress ? ", the greater of the two" : "";
  return `At a blade's root its own pull bends it with ${formatQuantity(bending, "stress", { decimals: 1 })}${first}; a fillet there takes the notch off.`;
}

/** @returns how near it is, in words and in percent of the way */
export function nearText({ ratio, verdict }: Limit): string {
  if (ratio === null) return "not judged";
  const share = Number.isFinite(ratio)
    ? `${formatFixed(PERCENT * ratio, 0)}${THIN_SPACE}% of the way`
    : "past it";
  return `${verdict}, ${share}`;
}

export const TONES = { within: "good", near: "near", beyond: "bad", unknown: "quiet" } as const;

function rotorDetail(rotor: RotorFigures): string {
  const tip = `Tip ${formatFixed(rotor.tipSpeed, 0)}${THIN_SPACE}m/s, Mach ${formatFixed(rotor.mach, 2)}.`;
  if (rotor.stress === null || rotor.burstSpeed === null || rotor.factor === null) return tip;
  const stress = `${figureIn(rotor.stress, "stress", 1)} of ${formatQuantity(rotor.strength ?? 0, "stress", { decimals: 0 })}`;
  const factor = Number.isFinite(rotor.factor)
    ? `, a factor of ${formatFixed(rotor.factor, 2)} on speed`
    : "";
  return `Should not be run faster: half of the ${rpmText(rotor.burstSpeed)} at which it bursts (safety factor ${LEAST_SPEED_FACTOR} on speed, common practice, no source). Stress ${stress}${factor}. ${bendingText(rotor)} ${tip}`;
}

function windingDetail({ warmUp, warmUpMissing, limits }: Limits): string {
  if (!warmUp) return warmUpMissing ? `Time to its limit: needs ${decapitalised(warmUpMissing)}` : "";
  const known = limits.some(({ key, limit }) => key === "winding" && limit !== null);
  if (!known) return "";
  if (warmUp.timeToLimit === null) return "From cold it never reaches its limit at this supply.";
  return `Longest safe run from cold: ${timeText(warmUp.timeToLimit)}, at this supply held.`;
}

function decapitalised(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}

function voltageDetail({ overVoltage }: Limits): string {
  if (!overVoltage) return "";
  const { ratio, of, pressureRatio, heatRatio } = overVoltage;
  return unbroken(
    `At ${formatFixed(ratio, 2)} × the rated voltage: ${of} × ${formatFixed(pressureRatio, 2)}, heat × ${formatFixed(heatRatio, 2)}; this build solved at both, cold.`,
  );
}

/** The winding at the maker's greatest current: how long, and where it settles. */
function currentDetail({ maxCurrent, limits }: Limits): string {
  if (!maxCurrent) return "";
  const { current, settlesAt, limitCurrent, timeToLimit } = maxCurrent;
  const limit = limits.find(({ key }) => key === "winding")?.limit ?? null;
  const settles =
    settlesAt === null
      ? `never settles: from ${figure("motor-current", limitCurrent)} on it runs away`
      : `settles at ${figure("winding", settlesAt)}`;
  const passes =
    timeToLimit === null || limit === null
      ? ""
      : `passes ${figure("winding", limit)} after ${timeText(timeToLimit)} and `;
  return `Held at ${figure("motor-current", current)}, the winding ${passes}${settles}.`;
}

/** @returns what stands under a limit's name: what gives an unknown, or what follows from the figure */
export function detailText(limit: Limit, limits: Limits): string {
  const missing = limit.missing ? `Needs: ${decapitalised(limit.missing)}` : "";
  if (limit.key === "winding") return [missing, windingDetail(limits)].filter(Boolean).join(" ");
  if (limit.key === "rotor-speed") return [missing, rotorDetail(limits.rotor)].filter(Boolean).join(" ");
  if (limit.key === "motor-current") return missing || currentDetail(limits);
  return limit.key === "motor-voltage" && !missing ? voltageDetail(limits) : missing;
}

/** @returns an energy as shown, with the speed it comes at */
export function energyText({ energy, speed }: Energy): string {
  if (energy === null) return "–";
  const joules = `${formatFixed(energy, decimalsFor(energy, 2))}${THIN_SPACE}J`;
  return speed === null ? joules : `${joules} at ${formatFixed(speed, 0)}${THIN_SPACE}m/s`;
}

/** @returns what the winding's picture shows, for those who don't see it */
export function windingSentence({ warmUp, limits }: Limits): string {
  const samples = warmUp?.samples ?? [];
  const last = samples[samples.length - 1];
  const winding = limits.find(({ key }) => key === "winding");
  const limit = winding?.limit ?? null;
  const runs = `Winding temperature from cold against time: ${formatQuantity(last?.temperature ?? 0, "temperature", { decimals: 0 })} after ${timeText(last?.time ?? 0)}.`;
  if (limit === null) return runs;
  const reached =
    warmUp?.timeToLimit === null || warmUp === null
      ? "is not reached"
      : `is reached after ${timeText(warmUp.timeToLimit)}`;
  return `${runs} The limit of ${formatQuantity(limit, "temperature", { decimals: 0 })} ${reached}.`;
}
