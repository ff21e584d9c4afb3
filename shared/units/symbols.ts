/** Exponents of metre, kilogram, second, ampere, kelvin and radian; those at the end that are 0 may be left out. */
export type Signature = readonly number[];

/** What a symbol stands for: its SI value and what it measures. */
export interface Meaning {
  readonly factor: number;
  readonly signature: Signature;
}

interface Symbols {
  /** symbols, apart by spaces; short prefixes go before them: "mm" */
  readonly short: string;
  /** names in full; prefixes in full go before them: "millimetres" */
  readonly long?: string;
  readonly factor: number;
  readonly signature: Signature;
  /** which prefixes it takes */
  readonly prefixes?: string;
}

/** Standard acceleration of free fall, exact by definition (3rd CGPM, 1901) [m/s²]. */
export const G = 9.80665;
/** Avoirdupois pound, exact (NIST SP 811, Appendix B.8) [kg]. */
export const POUND = 0.45359237;
export const OUNCE = POUND / 16;
const INCH = 0.0254;
export const FOOT = 0.3048;
export const CUBIC_FOOT = FOOT ** 3;
export const POUND_PER_SQUARE_INCH = (POUND * G) / INCH ** 2;
/** A metre of water and of mercury, conventional: 1000 and 13 595.1 kg/m³ at standard gravity (NIST SP 811, B.8, footnotes) [Pa]. */
export const WATER = 1000 * G;
export const MERCURY = 13595.1 * G;
const TURN = 2 * Math.PI;
const MINUTE = 60;

export const LENGTH: Signature = [1];
export const AREA: Signature = [2];
const VOLUME: Signature = [3];
export const MASS: Signature = [0, 1];
export const FORCE: Signature = [1, 1, -2];
export const PRESSURE: Signature = [-1, 1, -2];
export const FLOW: Signature = [3, 0, -1];
export const TIME: Signature = [0, 0, 1];
export const FREQUENCY: Signature = [0, 0, -1];
export const TURNING: Signature = [0, 0, -1, 0, 0, 1];
export const ANGLE: Signature = [0, 0, 0, 0, 0, 1];
export const CURRENT: Signature = [0, 0, 0, 1];
export const VOLTAGE: Signature = [2, 1, -3, -1];
export const RESISTANCE: Signature = [2, 1, -3, -2];
export const CHARGE: Signature = [0, 0, 1, 1];
export const TORQUE: Signature = [2, 1, -2];
export const POWER: Signature = [2, 1, -3];
const TEMPERATURE_STEP: Signature = [0, 0, 0, 0, 1];

/**
 * Every symbol that a unit may be written with.
 *
 * Source: BIPM SI Brochure, 9th ed.; NIST SP 811 (2008), Appendix B.8
 */
const SYMBOLS: readonly Symbols[] = [
  { short: "m", long: "metre metres meter meters", factor: 1, signature: LENGTH, prefixes: "n u m c d k" },
  { short: 'in "', long: "inch inches", factor: INCH, signature: LENGTH },
  { short: "ft '", long: "foot feet", factor: FOOT, signature: LENGTH },
  { short: "yd", long: "yard yards", factor: 3 * FOOT, signature: LENGTH },
  { short: "thou mil mils", factor: INCH / 1000, signature: LENGTH },
  { short: "L", long: "litre litres liter liters", factor: 1e-3, signature: VOLUME, prefixes: "u m c d" },
  { short: "cc ccm", factor: 1e-6, signature: VOLUME },
  { short: "lps", factor: 1e-3, signature: FLOW },
  { short: "lpm", factor: 1e-3 / MINUTE, signature: FLOW },
  { short: "cfm", factor: CUBIC_FOOT / MINUTE, signature: FLOW },
  { short: "cfs", factor: CUBIC_FOOT, signature: FLOW },
  { short: "g", long: "gram grams gramme grammes", factor: 1e-3, signature: MASS, prefixes: "u m k M" },
  { short: "kilo kilos", factor: 1, signature: MASS },
  { short: "gr", factor: 1e-3, signature: MASS },
  { short: "t", long: "tonne tonnes", factor: 1000, signature: MASS },
  { short: "oz", long: "ounce ounces", factor: OUNCE, signature: MASS },
  { short: "lb lbs lbm", long: "pound pounds", factor: POUND, signature: MASS },
  { short: "N", long: "newton newtons", factor: 1, signature: FORCE, prefixes: "n u m c k M" },
  { short: "gf", factor: 1e-3 * G, signature: FORCE },
  { short: "kgf kp", factor: G, signature: FORCE },
  { short: "ozf", factor: OUNCE * G, signature: FORCE },
  { short: "lbf", factor: POUND * G, signature: FORCE },
  { short: "dyn", factor: 1e-5, signature: FORCE },
  { short: "Pa", long: "pascal pascals", factor: 1, signature: PRESSURE, prefixes: "u m da h k M G" },
  { short: "bar", long: "bars", factor: 1e5, signature: PRESSURE, prefixes: "u m" },
  { short: "atm", factor: 101325, signature: PRESSURE },
  { short: "torr", factor: 101325 / 760, signature: PRESSURE },
  { short: "mmHg", factor: 1e-3 * MERCURY, signature: PRESSURE },
  { short: "inHg", factor: INCH * MERCURY, signature: PRESSURE },
  { short: "mmH2O", factor: 1e-3 * WATER, signature: PRESSURE },
  { short: "cmH2O", factor: 1e-2 * WATER, signature: PRESSURE },
  { short: "inH2O", factor: INCH * WATER, signature: PRESSURE },
  { short: "psi", factor: POUND_PER_SQUARE_INCH, signature: PRESSURE },
  { short: "psf", factor: (POUND * G) / FOOT ** 2, signature: PRESSURE },
  { short: "s sec secs", long: "second seconds", factor: 1, signature: TIME, prefixes: "u m" },
  { short: "min mins", long: "minute minutes", factor: MINUTE, signature: TIME },
  { short: "h hr hrs", long: "hour hours", factor: 3600, signature: TIME },
  { short: "d", long: "day days", factor: 86400, signature: TIME },
  { short: "Hz", long: "hertz", factor: 1, signature: FREQUENCY, prefixes: "m k M" },
  { short: "rpm", factor: TURN / MINUTE, signature: TURNING, prefixes: "k" },
  { short: "rps", factor: TURN, signature: TURNING },
  { short: "rev revs U", long: "turn turns cycle cycles", factor: TURN, signature: ANGLE },
  { short: "rad", long: "radian radians", factor: 1, signature: ANGLE, prefixes: "u m" },
  { short: "° deg", long: "degree degrees", factor: TURN / 360, signature: ANGLE },
  { short: "gon grad", factor: TURN / 400, signature: ANGLE },
  { short: "A", long: "ampere amperes amp amps", factor: 1, signature: CURRENT, prefixes: "n u m k M" },
  { short: "V", long: "volt volts", factor: 1, signature: VOLTAGE, prefixes: "n u m k M" },
  { short: "Ω ohm", long: "ohm ohms", factor: 1, signature: RESISTANCE, prefixes: "u m k M" },
  { short: "C", long: "coulomb coulombs", factor: 1, signature: CHARGE, prefixes: "u m k" },
  { short: "Ah", factor: 3600, signature: CHARGE, prefixes: "u m k" },
  { short: "W", long: "watt watts", factor: 1, signature: POWER, prefixes: "n u m k M" },
  { short: "hp", factor: 550 * FOOT * POUND * G, signature: POWER },
  { short: "J", long: "joule joules", factor: 1, signature: TORQUE, prefixes: "m k M" },
  { short: "Nm", factor: 1, signature: TORQUE, prefixes: "n u m k M" },
  { short: "Ncm", factor: 1e-2, signature: TORQUE, prefixes: "m" },
  { short: "gcm", factor: 1e-5 * G, signature: TORQUE },
  { short: "kgcm", factor: 1e-2 * G, signature: TORQUE },
  { short: "ozin", factor: OUNCE * G * INCH, signature: TORQUE },
  { short: "Nms", factor: 1, signature: [2, 1, -1], prefixes: "n u m" },
  { short: "K °C", long: "kelvin kelvins", factor: 1, signature: TEMPERATURE_STEP, prefixes: "m" },
];

interface Prefix {
  readonly long: string;
  readonly factor: number;
}

/** SI Brochure, 9th ed., table 7. */
const PREFIXES: Readonly<Record<string, Prefix>> = {
  n: { long: "nano", factor: 1e-9 },
  u: { long: "micro", factor: 1e-6 },
  m: { long: "milli", factor: 1e-3 },
  c: { long: "centi", factor: 1e-2 },
  d: { long: "deci", factor: 1e-1 },
  da: { long: "deca", factor: 10 },
  h: { long: "hecto", factor: 1e2 },
  k: { long: "kilo", factor: 1e3 },
  M: { long: "mega", factor: 1e6 },
  G: { long: "giga", factor: 1e9 },
};

/** One way of writing a symbol with its prefix, and what it stands for. */
export interface Spelling extends Meaning {
  readonly text: string;
}

function spellingsOf({ short, long = "", factor, signature, prefixes = "" }: Symbols): Spelling[] {
  const words = (text: string) => text.split(" ").filter(Boolean);
  const bare = [...new Set(words(`${short} ${long}`))].map((text) => ({ text, factor, signature }));
  const prefixed = words(prefixes).flatMap((key) => {
    const { long: name, factor: times } = PREFIXES[key];
    const texts = [...words(short).map((word) => key + word), ...words(long).map((word) => name + word)];
    return texts.map((text) => ({ text, factor: times * factor, signature }));
  });
  return [...bare, ...prefixed];
}

/** Every spelling of a single symbol, each once. */
export const SPELLINGS: readonly Spelling[] = SYMBOLS.flatMap(spellingsOf);

function indexed(key: (text: string) => string): ReadonlyMap<string, readonly Spelling[]> {
  const found = new Map<string, Spelling[]>();
  for (const spelling of SPELLINGS) {
    const at = key(spelling.text);
    found.set(at, [...(found.get(at) ?? []), spelling]);
  }
  return found;
}

const EXACT = indexed((text) => text);
const ANY_CASE = indexed((text) => text.toLowerCase());

/** @returns what a symbol means as it is written: "mm", "kPa", "millivolts" */
export function meaningsOf(text: string): readonly Meaning[] {
  return EXACT.get(text) ?? [];
}

/** @returns what a symbol means in any case, "KPA"; milli and mega stay apart where it can mean both: 5 mΩ is not 5 MΩ */
export function meaningsInAnyCase(text: string): readonly Meaning[] {
  const found = ANY_CASE.get(text.toLowerCase()) ?? [];
  const same = found.filter((spelling) => spelling.text[0] === text[0]);
  return /^m/i.test(text) && same.length > 0 ? same : found;
}
