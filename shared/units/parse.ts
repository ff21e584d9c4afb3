import { create, createUnitDependencies, type MathJsInstance, unitDependencies } from "mathjs";
import { type DimensionName, dimension } from "./dimensions.ts";
import { parseNumber } from "./number.ts";
import { refuse, shortened, type TypedQuantity, takeFreeUnits, toSI } from "./quantity.ts";

export { type TypedQuantity, toSI, UnitError } from "./quantity.ts";

const math = create({ unitDependencies, createUnitDependencies }) as MathJsInstance;
const RAD_PER_S_PER_RPM = (2 * Math.PI) / 60;
math.createUnit("rpm", `${RAD_PER_S_PER_RPM} rad/s`);
math.createUnit("krpm", `${1000 * RAD_PER_S_PER_RPM} rad/s`);
math.createUnit("cfm", "0.00047194745 m^3/s");

/** Spellings that instruments and people use, turned into what mathjs reads. */
const SPELLINGS: readonly (readonly [RegExp, string])[] = [
  [/°\s*C|℃/g, "degC"],
  [/°\s*F/g, "degF"],
  [/°/g, "deg"],
  [/Ω|Ω/g, "ohm"],
  [/[µμ]/g, "u"],
  [/²/g, "^2"],
  [/³/g, "^3"],
  [/₂/g, "2"],
  [/[·⋅×]/g, " "],
  [/\brev\b/g, "cycle"],
  [/\brps\b/g, "cycle/s"],
  [/\bmm\s?(H2O|WC|wg)\b/gi, "mmH2O"],
  [/\bcm\s?(H2O|WC)\b/gi, "cmH2O"],
  [/\bin\s?(H2O|WC|wg)\b/gi, "inH2O"],
];

/** Other shapes of the same quantity that a maker types: a load as a mass hung on, a rotation as hertz. */
const COUSINS: Partial<Record<DimensionName, readonly { like: string; factor: number }[]>> = {
  load: [{ like: "kg", factor: 9.80665 }],
  speed: [{ like: "Hz", factor: 2 * Math.PI }],
  kv: [{ like: "rad/(s V)", factor: 60 / (2 * Math.PI) }],
  torque: [{ like: "N m", factor: 1 }],
  viscousTorque: [
    { like: "N m s", factor: 1 },
    { like: "N m s/rad", factor: 1 },
  ],
};

const MATH_SI: Partial<Record<DimensionName, string>> = {
  area: "m^2",
  flow: "m^3/s",
  resistance: "ohm",
  kv: "rpm/V",
  torque: "N m",
  viscousTorque: "N m s",
  density: "kg/m^3",
};

function normalised(unitText: string): string {
  return SPELLINGS.reduce((text, [from, to]) => text.replace(from, to), unitText.trim());
}

/** "thermalResistance" as a reader says it. */
function inWords(name: DimensionName): string {
  return name === "kv"
    ? "a speed constant"
    : name.replace(/[A-Z]/g, (capital) => ` ${capital.toLowerCase()}`);
}

/** mathjs speaks of an unknown unit by throwing a SyntaxError: no unit, then. */
function readUnit(value: number, unitText: string) {
  if (!/^[A-Za-z0-9^*/() .]{1,40}$/.test(unitText)) return null;
  try {
    return math.unit(value, unitText);
  } catch (error) {
    if (error instanceof Error) return null;
    throw error;
  }
}

/** Every unit that mathjs knows, prefixes included, and the spellings above. */
function readFree(quantity: TypedQuantity, name: DimensionName, read: string): number {
  const { value, unit } = quantity;
  const parsed = readUnit(value, normalised(unit));
  if (!parsed) throw refuse(read, name, `"${shortened(unit)}" is no unit known here.`);
  const si = MATH_SI[name] ?? dimension(name).si;
  if (parsed.equalBase(math.unit(si))) return parsed.toNumber(si);
  for (const cousin of COUSINS[name] ?? []) {
    if (parsed.equalBase(math.unit(cousin.like))) return parsed.toNumber(cousin.like) * cousin.factor;
  }
  throw refuse(read, name, `"${shortened(unit)}" is no unit of ${inWords(name)}.`);
}

takeFreeUnits(readFree);

/** The unit of a bare fraction is a digit itself: "0.7 1". */
const BARE_ONE = /^([+-]?\d*[.,]?\d+)\s(1)$/;

/**
 * Splits what a person typed into number and unit, and checks the unit.
 *
 * @param text - such as "12 mmH2O", "0,4 psi", "38"
 * @param name - which quantity it must be
 * @param defaultUnit - the unit meant when none is typed
 * @returns the quantity as typed, the default unit filled in
 * @throws {UnitError} when there is no number, the number is ambiguous, or the unit is of another quantity
 */
export function parseQuantity(text: string, name: DimensionName, defaultUnit?: string): TypedQuantity {
  const trimmed = text.trim();
  const ofOne = name === "fraction" ? BARE_ONE.exec(trimmed) : null;
  const bare = /^([+-]?[\d.,\u2009\u202f\u00a0' ]*\d[\d.,]*(?:[eE][+-]?\d+)?|[+-]?\.\d+)\s*(.*)$/u.exec(
    trimmed,
  );
  const match = ofOne ?? bare;
  if (!match)
    throw refuse(trimmed, name, trimmed === "" ? "Nothing was typed." : "There is no number in it.");
  const value = parseNumber(match[1]);
  if (value === null) throw refuse(trimmed, name, "The number can be read in two ways or in none.");
  const unit = match[2] === "" ? (defaultUnit ?? dimension(name).shown[0].label) : match[2].trim();
  toSI({ value, unit }, name, trimmed);
  return { value, unit };
}
