import type { Limit, LimitKey } from "../limits/limit.ts";
import { listed } from "./attitudeWords.ts";
import { pairText, percentText, rpmText } from "./figures.ts";

/** @returns " at full charge", " at 60 % charge"; nothing where the voltage is as given */
export function atCharge(charge: number | null): string {
  if (charge === null) return "";
  return charge === 1 ? " at full charge" : ` at ${percentText(charge)} charge`;
}

const volts = (value: number, limit: number) => pairText(value, limit, "V", 2);
const amperes = (value: number, limit: number) => pairText(value, limit, "A", 1);

type Sayer = (value: number, limit: number, at: string) => string;

const SAYERS: Readonly<Record<Exclude<LimitKey, "winding">, Sayer>> = {
  "motor-voltage": (value, limit, at) => {
    const [has, allowed] = volts(value, limit);
    return `the motor gets ${has}${at}, its maker rates it at ${allowed}`;
  },
  "motor-current": (value, limit, at) => {
    const [has, allowed] = amperes(value, limit);
    return `the motor draws ${has}${at}, its maker allows ${allowed}`;
  },
  "cell-current": (value, limit, at) => {
    const [has, allowed] = amperes(value, limit);
    return `a cell gives ${has}${at}, its maker allows ${allowed}`;
  },
  "cell-voltage": (value, limit) => {
    const [has, allowed] = volts(value, limit);
    return `a loaded cell falls to ${has}, its minimum is ${allowed}`;
  },
  "rotor-speed": (value, limit, at) =>
    `the rotor turns at ${rpmText(value)}${at}, ${percentText(value / limit)} of its safe speed`,
};

/** @returns one passed rating in words: "the motor gets 7.86 V at full charge, its maker rates it at 7.40 V" */
export function ratingText({ key, value, limit }: Limit, charge: number | null): string {
  if (key === "winding" || value === null || limit === null) return "";
  return SAYERS[key](value, limit, atCharge(charge));
}

const NEAREST: Readonly<Record<LimitKey, readonly [what: string, of: string]>> = {
  winding: ["the winding", "of the way to its limit"],
  "motor-voltage": ["the motor's voltage", "of its rating"],
  "motor-current": ["the motor's current", "of what its maker allows"],
  "cell-current": ["a cell's current", "of what its maker allows"],
  "cell-voltage": ["a cell's voltage", "of the way to its minimum"],
  "rotor-speed": ["the rotor", "of its safe speed"],
};

/** @returns that nothing burns or bursts, and what comes nearest */
export function nearestText(nearest: Limit | null, charge: number | null): string {
  if (!nearest || nearest.ratio === null) return "";
  const [what, of] = NEAREST[nearest.key];
  return `Nothing burns or bursts; nearest is ${what}, at ${percentText(nearest.ratio)} ${of}${atCharge(charge)}.`;
}

const UNKNOWN: Readonly<Record<LimitKey, string>> = {
  winding: "the winding's temperature",
  "motor-voltage": "the motor's voltage",
  "motor-current": "the motor's current",
  "cell-current": "the current of a cell",
  "cell-voltage": "the cell's voltage",
  "rotor-speed": "the rotor's strength",
};

/** @returns the limits that nothing is known of, in words; nothing where all are judged */
export function notJudgedText(keys: readonly LimitKey[]): string {
  if (keys.length === 0) return "";
  return `Not judged, for want of data: ${listed(keys.map((key) => UNKNOWN[key]))}.`;
}
