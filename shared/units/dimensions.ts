import { CUBIC_FOOT, G, MERCURY, OUNCE, POUND, POUND_PER_SQUARE_INCH, WATER } from "./symbols.ts";

/**
 * The quantities that the bench knows: for each its SI unit, the units a maker may read off an instrument,
 * and an example for messages. The factor turns one shown unit into SI; offsets exist for temperature alone.
 */
export interface ShownUnit {
  /** as typed and shown */
  readonly label: string;
  /** SI value of one such unit */
  readonly factor: number;
  /** SI value at a reading of 0 (temperatures) */
  readonly offset?: number;
}

export interface Dimension {
  readonly name: string;
  /** the unit inside the code; "rpm/V" for kv, "°" for an inclination, SI for the rest */
  readonly si: string;
  /** units offered in menus, the first is the default */
  readonly shown: readonly ShownUnit[];
  readonly example: string;
}

const unit = (label: string, factor: number, offset?: number): ShownUnit =>
  offset === undefined ? { label, factor } : { label, factor, offset };

const RAD_PER_S_PER_RPM = (2 * Math.PI) / 60;

const table = {
  length: {
    si: "m",
    shown: [
      unit("mm", 1e-3),
      unit("m", 1),
      unit("cm", 1e-2),
      unit("µm", 1e-6),
      unit("in", 0.0254),
      unit("thou", 2.54e-5),
    ],
    example: "38 mm",
  },
  area: { si: "m²", shown: [unit("cm²", 1e-4), unit("mm²", 1e-6), unit("m²", 1)], example: "40 cm²" },
  mass: {
    si: "kg",
    shown: [unit("g", 1e-3), unit("kg", 1), unit("oz", OUNCE), unit("lb", POUND)],
    example: "138 g",
  },
  load: {
    si: "N",
    shown: [
      unit("g", 1e-3 * G),
      unit("N", 1),
      unit("kg", G),
      unit("gf", 1e-3 * G),
      unit("kgf", G),
      unit("oz", OUNCE * G),
      unit("lb", POUND * G),
    ],
    example: "420 g",
  },
  pressure: {
    si: "Pa",
    shown: [
      unit("Pa", 1),
      unit("kPa", 1e3),
      unit("mmH2O", 1e-3 * WATER),
      unit("hPa", 100),
      unit("mbar", 100),
      unit("cmH2O", 1e-2 * WATER),
      unit("inH2O", 0.0254 * WATER),
      unit("inHg", 0.0254 * MERCURY),
      unit("psi", POUND_PER_SQUARE_INCH),
    ],
    example: "12 mmH2O",
  },
  flow: {
    si: "m³/s",
    shown: [
      unit("L/s", 1e-3),
      unit("L/min", 1e-3 / 60),
      unit("m³/h", 1 / 3600),
      unit("m³/s", 1),
      unit("cfm", CUBIC_FOOT / 60),
    ],
    example: "4.2 L/s",
  },
  speed: {
    si: "rad/s",
    shown: [
      unit("rpm", RAD_PER_S_PER_RPM),
      unit("rev/s", 2 * Math.PI),
      unit("Hz", 2 * Math.PI),
      unit("rad/s", 1),
    ],
    example: "24000 rpm",
  },
  voltage: { si: "V", shown: [unit("V", 1), unit("mV", 1e-3)], example: "3.9 V" },
  current: { si: "A", shown: [unit("A", 1), unit("mA", 1e-3)], example: "1.2 A" },
  resistance: { si: "Ω", shown: [unit("Ω", 1), unit("mΩ", 1e-3)], example: "0.35 Ω" },
  kv: { si: "rpm/V", shown: [unit("rpm/V", 1)], example: "7800 rpm/V" },
  torque: {
    si: "N·m",
    shown: [unit("mN·m", 1e-3), unit("N·m", 1), unit("µN·m", 1e-6)],
    example: "0.2 mN·m",
  },
  viscousTorque: {
    si: "N·m·s/rad",
    shown: [unit("nN·m·s", 1e-9), unit("N·m·s", 1)],
    example: "20 nN·m·s",
  },
  stiffness: {
    si: "N/m",
    shown: [unit("N/mm", 1e3), unit("N/m", 1), unit("g/mm", G), unit("lbf/in", (POUND * G) / 0.0254)],
    example: "6 N/mm",
  },
  power: { si: "W", shown: [unit("W", 1), unit("mW", 1e-3)], example: "6.5 W" },
  charge: { si: "C", shown: [unit("mAh", 3.6), unit("Ah", 3600), unit("C", 1)], example: "650 mAh" },
  temperature: {
    si: "K",
    shown: [unit("°C", 1, 273.15), unit("K", 1), unit("°F", 5 / 9, 459.67 * (5 / 9))],
    example: "18 °C",
  },
  thermalResistance: { si: "K/W", shown: [unit("K/W", 1)], example: "22 K/W" },
  time: { si: "s", shown: [unit("s", 1), unit("min", 60), unit("h", 3600)], example: "12 min" },
  angle: {
    si: "rad",
    shown: [unit("°", Math.PI / 180), unit("rad", 1)],
    example: "34°",
  },
  inclination: { si: "°", shown: [unit("°", 1), unit("rad", 180 / Math.PI)], example: "153.5°" },
  density: { si: "kg/m³", shown: [unit("kg/m³", 1), unit("g/cm³", 1000)], example: "1.19 kg/m³" },
  stress: { si: "Pa", shown: [unit("MPa", 1e6), unit("Pa", 1)], example: "35 MPa" },
  fraction: { si: "1", shown: [unit("%", 0.01), unit("1", 1)], example: "60 %" },
} as const satisfies Record<string, Omit<Dimension, "name">>;

export type DimensionName = keyof typeof table;

export const DIMENSION_NAMES = Object.keys(table) as readonly DimensionName[];

/** @returns the table row of a quantity, its name included */
export function dimension(name: DimensionName): Dimension {
  return { name, ...table[name] };
}

/** @returns the shown unit with that label (or the default one) @throws {RangeError} when the quantity has no such unit */
export function shownUnit(name: DimensionName, label?: string): ShownUnit {
  const units: readonly ShownUnit[] = table[name].shown;
  const found = label === undefined ? units[0] : units.find((candidate) => candidate.label === label);
  if (!found) throw new RangeError(`${name} is not shown in "${label}"`);
  return found;
}
