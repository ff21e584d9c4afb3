import type { DimensionName } from "../../../../shared/units/dimensions.ts";
import { dimension } from "../../../../shared/units/dimensions.ts";
import { isGood, readQuantity, unitLabels } from "../record/texts.ts";

/** What a column of the file is. */
export type Role =
  | "speed"
  | "flow"
  | "pressure"
  | "density"
  | "voltage"
  | "current"
  | "torque"
  | "thrust"
  | "throttle"
  | "open"
  | "setAside"
  | "ignore";

export interface ColumnMapping {
  readonly role: Role;
  /** the unit meant where a cell carries none; empty where the role has none */
  readonly unit: string;
}

export const ROLE_LABELS: Readonly<Record<Role, string>> = {
  speed: "speed",
  flow: "flow",
  pressure: "pressure (static)",
  density: "air density",
  voltage: "voltage",
  current: "current",
  torque: "torque",
  thrust: "thrust",
  throttle: "throttle",
  open: "open holes",
  setAside: "set aside, why",
  ignore: "leave out",
};

/** Kinds of test that a file can be. */
export type ImportKind = "curve" | "thrust";

/** What a column of a file can be, by the kind of test that it becomes. */
export const ROLES: Readonly<Record<ImportKind, readonly Role[]>> = {
  curve: [
    "speed",
    "flow",
    "pressure",
    "density",
    "voltage",
    "current",
    "torque",
    "open",
    "setAside",
    "ignore",
  ],
  thrust: ["speed", "thrust", "current", "torque", "voltage", "throttle", "setAside", "ignore"],
};

const DIMENSIONS: Partial<Record<Role, DimensionName>> = {
  speed: "speed",
  flow: "flow",
  pressure: "pressure",
  density: "density",
  voltage: "voltage",
  current: "current",
  torque: "torque",
  thrust: "load",
  throttle: "fraction",
};

/** @returns which quantity a role holds; null where it is none */
export function roleDimension(role: Role): DimensionName | null {
  return DIMENSIONS[role] ?? null;
}

/** Words that say a column is about a reading's doubt or another instrument, not the reading. */
const BESIDE = /^(samples?|count|stderr|se|sd|std|err|error|raw|adc|venturi|total|unc|uncertainty)$/;

const LEADING: readonly (readonly [RegExp, Role])[] = [
  [/^(rho|ρ|density|dichte)$/, "density"],
  [/^(torque|moment|drehmoment)$/, "torque"],
  [/^(thrust|force|schub)$/, "thrust"],
  [/^(throttle|gas)$/, "throttle"],
  [/^(q|flow|volumeflow|vdot|airflow)$/, "flow"],
  [/^(p|dp|Δp|δp|pressure|deltap|druck|suction|depression)$/, "pressure"],
  [/^(n|rpm|rps|speed|omega|ω|rev|drehzahl)$/, "speed"],
  [/^(u|v|volt|volts|voltage|spannung)$/, "voltage"],
  [/^(i|amp|amps|current|strom)$/, "current"],
  [/^open$/, "open"],
];

const UNIT_SPELLINGS: Readonly<Record<string, string>> = {
  m3s: "m³/s",
  "m3/s": "m³/s",
  "m^3/s": "m³/s",
  m3h: "m³/h",
  "m3/h": "m³/h",
  lpm: "L/min",
  lmin: "L/min",
  "l/min": "L/min",
  lps: "L/s",
  ls: "L/s",
  "l/s": "L/s",
  rps: "rev/s",
  "1/s": "rev/s",
  "1/min": "rpm",
  kgm3: "kg/m³",
  "kg/m3": "kg/m³",
  "kg/m^3": "kg/m³",
  nm: "N·m",
  mnm: "mN·m",
};

const wordsOf = (header: string): string[] =>
  header
    .replace(/[[(].*$/, "")
    .split(/[^\p{L}\p{N}/^]+/u)
    .filter(Boolean);

const isUnit = (unit: string, name: DimensionName): boolean =>
  !/^\d/.test(unit) && isGood(readQuantity(`1 ${unit}`, name));

/** Words of a header that may be a unit. The first is the reading's own name ("p", "V") unless it can't be that. */
function unitWords(header: string): string[] {
  const [first = "", ...others] = wordsOf(header);
  return /^rp[ms]$/i.test(first) ? [...others.toReversed(), first] : others.toReversed();
}

/** @returns the unit that a header names, "dp [kPa]" or "p_static_kPa"; null where it names none of that quantity */
function unitIn(header: string, name: DimensionName): string | null {
  const bracketed = /[[(]\s*([^\])]+?)\s*[\])]/.exec(header)?.[1];
  const spelled = (word: string) => UNIT_SPELLINGS[word.toLowerCase()] ?? word;
  const candidates =
    bracketed === undefined ? unitWords(header).map(spelled) : [bracketed, spelled(bracketed)];
  return candidates.find((unit) => isUnit(unit, name)) ?? null;
}

function roleOf(header: string): Role {
  const words = wordsOf(header).map((word) => word.toLowerCase());
  if (words.join(" ").startsWith("set aside")) return "setAside";
  if (words.slice(1).some((word) => BESIDE.test(word)) || words.length === 0) return "ignore";
  const first =
    /^(air|motor|static|shaft|fan|rotor)$/.test(words[0]) && words.length > 1 ? words[1] : words[0];
  return LEADING.find(([pattern]) => pattern.test(first))?.[1] ?? "ignore";
}

/** @returns the mapping of a column that takes a role, its unit read from the header or the quantity's first */
export function mappingFor(role: Role, header: string): ColumnMapping {
  const name = roleDimension(role);
  if (name === null) return { role, unit: "" };
  return { role, unit: unitIn(header, name) ?? dimension(name).shown[0].label };
}

const isNominal = (header: string): boolean =>
  wordsOf(header).some((word) => /^(nominal|nom|set)$/i.test(word));

/** Guesses what each column is from its header; of two for one role the first that was read counts before one that was set, the other is left out. */
export function guessMapping(header: readonly string[], kind: ImportKind = "curve"): ColumnMapping[] {
  const roles = header.map(roleOf).map((role) => (ROLES[kind].includes(role) ? role : "ignore"));
  const places = roles.map((_, i) => i);
  return header.map((name, at) => {
    const role = roles[at];
    if (role === "open" || role === "ignore") return mappingFor(role, name);
    const alike = places.filter((i) => roles[i] === role);
    const chosen = alike.find((i) => !isNominal(header[i])) ?? alike[0];
    return mappingFor(at === chosen ? role : "ignore", name);
  });
}

/** @returns true where the header itself names the unit */
export function namesUnit(header: string, role: Role): boolean {
  const name = roleDimension(role);
  return name === null || unitIn(header, name) !== null;
}

/** @returns the units to choose from, the present one among them */
export function unitChoices(role: Role, present: string): string[] {
  const name = roleDimension(role);
  if (name === null) return [];
  return unitLabels(name, present);
}
