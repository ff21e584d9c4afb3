import { DIMENSION_NAMES, type DimensionName, dimension, type ShownUnit } from "./dimensions.ts";
import * as is from "./symbols.ts";
import { sameSignature, unitMeanings } from "./unitText.ts";

/** How a unit turns into the SI unit of a quantity: value · factor + offset. */
export interface Conversion {
  readonly factor: number;
  readonly offset: number;
}

interface Accepted {
  readonly signature: is.Signature;
  /** SI value of the quantity by SI value of that signature */
  readonly times: number;
}

const TURN = 2 * Math.PI;
const RPM = TURN / 60;
const as = (signature: is.Signature, times = 1): Accepted => ({ signature, times });

/** What a unit may measure to stand for a quantity: a load also as the mass hung on, a rotation as turns a second. */
const ACCEPTED: Readonly<Record<DimensionName, readonly Accepted[]>> = {
  length: [as(is.LENGTH)],
  roughness: [as(is.LENGTH)],
  height: [as(is.LENGTH)],
  area: [as(is.AREA)],
  smallArea: [as(is.AREA)],
  volume: [as([3])],
  mass: [as(is.MASS)],
  load: [as(is.FORCE), as(is.MASS, is.G)],
  heavyLoad: [as(is.FORCE), as(is.MASS, is.G)],
  pressure: [as(is.PRESSURE)],
  airPressure: [as(is.PRESSURE)],
  flow: [as(is.FLOW)],
  speed: [as(is.TURNING), as(is.FREQUENCY, TURN)],
  voltage: [as(is.VOLTAGE)],
  current: [as(is.CURRENT)],
  resistance: [as(is.RESISTANCE)],
  smallResistance: [as(is.RESISTANCE)],
  kv: [as([-2, -1, 2, 1, 0, 1], 1 / RPM), as([-2, -1, 2, 1], TURN / RPM)],
  torque: [as(is.TORQUE), as([1, 1], is.G)],
  viscousTorque: [as([2, 1, -1]), as([2, 1, -1, 0, 0, -1])],
  stiffness: [as([0, 1, -2]), as([-1, 1], is.G)],
  power: [as(is.POWER)],
  charge: [as(is.CHARGE)],
  temperature: [],
  thermalResistance: [as([-2, -1, 3, 0, 1])],
  time: [as(is.TIME)],
  duration: [as(is.TIME)],
  angle: [as(is.ANGLE)],
  inclination: [as(is.ANGLE, 360 / TURN)],
  density: [as([-3, 1])],
  materialDensity: [as([-3, 1])],
  stress: [as(is.PRESSURE)],
  fraction: [],
};

const CELSIUS: Conversion = { factor: 1, offset: 273.15 };
const KELVIN: Conversion = { factor: 1, offset: 0 };
const FAHRENHEIT: Conversion = { factor: 5 / 9, offset: 459.67 * (5 / 9) };
const ONE: Conversion = { factor: 1, offset: 0 };
const PERCENT: Conversion = { factor: 0.01, offset: 0 };

/** Names that mean something else outside their quantity, "18 C" is a temperature and no charge, or that no symbol makes; in any case. */
const NAMES: Partial<Record<DimensionName, Readonly<Record<string, Conversion>>>> = {
  temperature: {
    c: CELSIUS,
    "°c": CELSIUS,
    degc: CELSIUS,
    celsius: CELSIUS,
    k: KELVIN,
    kelvin: KELVIN,
    f: FAHRENHEIT,
    "°f": FAHRENHEIT,
    degf: FAHRENHEIT,
    fahrenheit: FAHRENHEIT,
  },
  fraction: { "": ONE, "1": ONE, "%": PERCENT, percent: PERCENT, pct: PERCENT },
  kv: { kv: ONE },
  thermalResistance: { "c/w": ONE },
};

/** A unit of the table keeps the table's own factor, however it is spelled. */
const SAME = 1e-12;

function asShown(name: DimensionName, factor: number): Conversion {
  const shown: readonly ShownUnit[] = dimension(name).shown;
  const found = shown.find((unit) => Math.abs(unit.factor - factor) <= SAME * factor);
  return { factor: found?.factor ?? factor, offset: 0 };
}

function fromSymbols(name: DimensionName, text: string): Conversion | null {
  const times = (signature: is.Signature) =>
    ACCEPTED[name].find((each) => sameSignature(each.signature, signature))?.times;
  const meanings = unitMeanings(text, ({ signature }) => times(signature) !== undefined);
  const factors = meanings.map(({ factor, signature }) => factor * (times(signature) ?? Number.NaN));
  const [first] = factors;
  const agree = factors.every((factor) => Math.abs(factor - first) <= SAME * first);
  return first !== undefined && agree ? asShown(name, first) : null;
}

function read(name: DimensionName, text: string): Conversion | null {
  const { shown } = dimension(name);
  const labelled = shown.find(({ label }) => label === text);
  if (labelled) return { factor: labelled.factor, offset: labelled.offset ?? 0 };
  const plain = text.replace(/[℃º]/g, (sign) => (sign === "℃" ? "°C" : "°")).replace(/\s+/g, "");
  const names = NAMES[name] ?? {};
  const key = plain.toLowerCase();
  if (Object.hasOwn(names, key)) return names[key];
  return fromSymbols(name, text);
}

/** More than these, and it is no unit [characters]. */
const LONGEST = 40;
/** So many spellings are kept; a book holds a few dozen. */
const KEPT = 2000;
const known = new Map<DimensionName, Map<string, Conversion | null>>(
  DIMENSION_NAMES.map((name) => [name, new Map()]),
);

/**
 * A unit as people write it.
 *
 * @param name - which quantity it must be a unit of
 * @param text - "mm", "KPA", "kg/m³", "U/min"; in any case where no two units are told apart by it
 * @returns how it turns into SI; null where it is no unit of that quantity
 */
export function conversionOf(name: DimensionName, text: string): Conversion | null {
  const kept = known.get(name) ?? new Map<string, Conversion | null>();
  const unit = text.trim();
  if (unit.length > LONGEST) return null;
  const before = kept.get(unit);
  if (before !== undefined) return before;
  const found = read(name, unit);
  if (kept.size >= KEPT) kept.clear();
  kept.set(unit, found);
  return found;
}
