import { namedAttitudes } from "../../../../shared/book/attitudes.ts";
import type { Limit } from "../../../../shared/decide/choose/result.ts";
import { marginText } from "../../../../shared/decide/verdict/figures.ts";
import type { ChooseRequest } from "../../../../shared/model/api/choose.ts";
import type { Build } from "../../../../shared/model/build.ts";
import { formatFixed, formatQuantity } from "../../../../shared/units/format.ts";
import type { Broken } from "../answers.ts";
import { valueText } from "../columns.ts";

type Wants = ChooseRequest["wants"];
type Mode = Wants["attitudes"][number]["mode"];

/** Names of what is wanted, for sentences. */
export interface WantedNames {
  readonly parked: string;
  readonly driving: string;
}

/** @returns an attitude as a sentence says it */
export function attitudeName(angle: number | "worst", build: Build | null): string {
  if (angle === "worst") return "the worst attitude";
  if (angle === 0) return "the floor";
  const named = build && namedAttitudes(build).find((each) => each.angle === angle);
  return named?.name ?? `the attitude at ${formatFixed(angle, 0)}°`;
}

/** @returns what the two margins are of: the attitude, or that it is the least of several */
export function wantedNames(wants: Wants, build: Build | null): WantedNames {
  const nameOf = (mode: Mode) => {
    const angles = wants.attitudes.filter((each) => each.mode === mode).map(({ angle }) => angle);
    const [only] = angles;
    return angles.length === 1 ? attitudeName(only, build) : `the least of ${angles.length} attitudes`;
  };
  return { parked: nameOf("parked"), driving: nameOf("driving") };
}

/** Names of the limits, for a count of what they keep out. */
const NAMES: Readonly<Record<Limit, string>> = {
  point: "the motor turns",
  parked: "the margin parked",
  driving: "the margin while driving",
  crossing: "the margin over the joints",
  windingTemperature: "winding",
  rotorFactor: "rotor's burst speed",
  motorCurrent: "motor's current by its maker",
  motorVoltage: "motor's voltage by its maker",
  cellCurrent: "cell's current by its maker",
  height: "total height",
  clearance: "the stacks of Fit-up",
  price: "price",
  time: "minutes",
  keptTime: "minutes that the margin is kept",
};
/** As an answer names them. */
export const LIMIT_NAMES: Readonly<Record<string, string>> = NAMES;

const times = (value: number | null) => `${formatFixed(value ?? 0, 2)}\u202f×`;
const volts = (value: number | null) => (value === null ? "–" : formatQuantity(value, "voltage"));
const amps = (value: number | null) => (value === null ? "–" : formatQuantity(value, "current"));

type Sayer = (value: number | null, allowed: number | null, names: WantedNames) => string;

const margin =
  (mode: Mode): Sayer =>
  (value, allowed, names) =>
    `${names[mode]}${mode === "driving" ? " while driving" : " parked"} has ${marginText(value ?? 0)}, ${times(allowed)} wanted`;

const SENTENCES: Readonly<Record<Limit, Sayer>> = {
  point: () => "the motor does not turn",
  parked: margin("parked"),
  driving: margin("driving"),
  crossing: (value, allowed) =>
    `over the hardest joint of the surface it has ${marginText(value ?? 0)}, ${times(allowed)} wanted`,
  windingTemperature: (value, allowed) =>
    value === null
      ? "the winding's temperature is not known: the motor has no thermal resistance"
      : `the winding comes to ${valueText("windingTemperature", value)}, ${valueText("windingTemperature", allowed)} at most`,
  rotorFactor: (value, allowed) =>
    value === null
      ? "the rotor's burst speed is not known: it has no material"
      : `the rotor bursts at ${times(value)} its speed, ${times(allowed)} wanted`,
  motorCurrent: (value, allowed) => `the motor draws ${amps(value)}, its maker allows ${amps(allowed)}`,
  motorVoltage: (value, allowed) => `the motor gets ${volts(value)}, its maker rates it at ${volts(allowed)}`,
  cellCurrent: (value, allowed) => `a cell gives ${amps(value)}, its maker allows ${amps(allowed)}`,
  height: (value, allowed) =>
    `the total height is ${valueText("height", value)}, ${valueText("height", allowed)} at most`,
  clearance: (value) =>
    value === null
      ? "the housing can't be judged: a size of its stacks is not known"
      : `the housing is ${formatQuantity(-value, "length", { digits: 2 })} short at worst`,
  price: (value, allowed) =>
    value === null
      ? "its price is not known: not every part states one"
      : `the price is ${valueText("price", value)}, ${valueText("price", allowed)} at most`,
  time: (value, allowed) =>
    value === null
      ? "its minutes are not known"
      : `it runs ${valueText("time", value)}, ${valueText("time", allowed)} wanted`,
  keptTime: (value, allowed) =>
    value === null
      ? "how long a controller keeps the margin is not known"
      : value === 0
        ? "even full throttle is too little to keep the margin from the start"
        : `a controller keeps the margin for ${valueText("keptTime", value)}, ${valueText("keptTime", allowed)} wanted`,
};

const SAYERS: Readonly<Record<string, Sayer>> = SENTENCES;

/** @returns one broken limit in words: "the wall while driving has 1.16 ×, 1.50 × wanted" */
export function brokenText({ limit, value, allowed }: Broken, names: WantedNames): string {
  return SAYERS[limit]?.(value, allowed, names) ?? limit;
}

/** @returns why a combination is in or out, one line */
export function inOrOut(broken: readonly Broken[], names: WantedNames): string {
  const [first, ...rest] = broken;
  if (!first) return "in: it meets every limit";
  const more = rest.length > 0 ? `; and ${rest.length} more` : "";
  return `out: ${brokenText(first, names)}${more}`;
}
