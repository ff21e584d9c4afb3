import { CUBIC_FOOT, FOOT, G, MERCURY, OUNCE, POUND, POUND_PER_SQUARE_INCH, WATER } from "./symbols.ts";

/**
 * The quantities that the bench knows: for each its SI unit, the units a maker may read off an instrument,
 * and an example for messages. The factor turns one shown unit into SI; offsets exist for temperature alone.
 * What is told in a unit of another size (a roughness, the air's pressure) is a quantity of its own, so that its
 * unit is chosen for itself. Which unit a book shows is set in `showing.ts`.
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
  /** units offered in menus, the first is the one shown unless the book says otherwise */
  readonly shown: readonly ShownUnit[];
  readonly example: string;
  /** what it is called where its unit is chosen; without it, it is always shown in the first */
  readonly chosenFor?: string;
  /** label of its unit in the inch set, the first unless given */
  readonly inch?: string;
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
    chosenFor: "Sizes and gaps",
    inch: "in",
  },
  roughness: {
    si: "m",
    shown: [unit("µm", 1e-6), unit("mm", 1e-3), unit("thou", 2.54e-5), unit("in", 0.0254)],
    example: "30 µm",
    chosenFor: "Roughness",
    inch: "thou",
  },
  height: {
    si: "m",
    shown: [unit("m", 1), unit("cm", 1e-2), unit("ft", FOOT), unit("in", 0.0254)],
    example: "2 m",
    chosenFor: "Heights: altitude, a fall",
    inch: "ft",
  },
  area: {
    si: "m²",
    shown: [unit("cm²", 1e-4), unit("mm²", 1e-6), unit("m²", 1), unit("in²", 0.0254 ** 2)],
    example: "40 cm²",
    chosenFor: "Areas",
    inch: "in²",
  },
  smallArea: {
    si: "m²",
    shown: [unit("mm²", 1e-6), unit("cm²", 1e-4), unit("in²", 0.0254 ** 2)],
    example: "20 mm²",
    chosenFor: "Small areas: a notch, a hole",
    inch: "in²",
  },
  volume: {
    si: "m³",
    shown: [unit("cm³", 1e-6), unit("mm³", 1e-9), unit("in³", 0.0254 ** 3)],
    example: "42 cm³",
    chosenFor: "Volumes",
    inch: "in³",
  },
  mass: {
    si: "kg",
    shown: [unit("g", 1e-3), unit("kg", 1), unit("oz", OUNCE), unit("lb", POUND)],
    example: "138 g",
    chosenFor: "Masses",
    inch: "oz",
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
    chosenFor: "Pulls and loads",
    inch: "oz",
  },
  heavyLoad: {
    si: "N",
    shown: [unit("kg", G), unit("g", 1e-3 * G), unit("N", 1), unit("lb", POUND * G)],
    example: "2 kg",
    chosenFor: "Heavy loads",
    inch: "lb",
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
    chosenFor: "Suction",
    inch: "inH2O",
  },
  airPressure: {
    si: "Pa",
    shown: [
      unit("hPa", 100),
      unit("mbar", 100),
      unit("kPa", 1e3),
      unit("Pa", 1),
      unit("inHg", 0.0254 * MERCURY),
      unit("psi", POUND_PER_SQUARE_INCH),
    ],
    example: "1013 hPa",
    chosenFor: "Pressure of the air",
    inch: "inHg",
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
    chosenFor: "Flow",
    inch: "cfm",
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
    chosenFor: "Speed of a rotor",
  },
  voltage: { si: "V", shown: [unit("V", 1), unit("mV", 1e-3)], example: "3.9 V" },
  current: { si: "A", shown: [unit("A", 1), unit("mA", 1e-3)], example: "1.2 A" },
  resistance: { si: "Ω", shown: [unit("Ω", 1), unit("mΩ", 1e-3)], example: "0.35 Ω" },
  smallResistance: { si: "Ω", shown: [unit("mΩ", 1e-3), unit("Ω", 1)], example: "20 mΩ" },
  kv: { si: "rpm/V", shown: [unit("rpm/V", 1)], example: "7800 rpm/V" },
  torque: {
    si: "N·m",
    shown: [unit("mN·m", 1e-3), unit("N·m", 1), unit("µN·m", 1e-6), unit("oz·in", OUNCE * G * 0.0254)],
    example: "0.2 mN·m",
    chosenFor: "Torque",
    inch: "oz·in",
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
    chosenFor: "Stiffness",
    inch: "lbf/in",
  },
  power: { si: "W", shown: [unit("W", 1), unit("mW", 1e-3)], example: "6.5 W" },
  charge: { si: "C", shown: [unit("mAh", 3.6), unit("Ah", 3600), unit("C", 1)], example: "650 mAh" },
  temperature: {
    si: "K",
    shown: [unit("°C", 1, 273.15), unit("K", 1), unit("°F", 5 / 9, 459.67 * (5 / 9))],
    example: "18 °C",
    chosenFor: "Temperature",
    inch: "°F",
  },
  thermalResistance: { si: "K/W", shown: [unit("K/W", 1)], example: "22 K/W" },
  time: { si: "s", shown: [unit("s", 1), unit("min", 60), unit("h", 3600)], example: "12 min" },
  duration: { si: "s", shown: [unit("min", 60), unit("s", 1), unit("h", 3600)], example: "12 min" },
  angle: {
    si: "rad",
    shown: [unit("°", Math.PI / 180), unit("rad", 1)],
    example: "34°",
  },
  inclination: { si: "°", shown: [unit("°", 1), unit("rad", 180 / Math.PI)], example: "153.5°" },
  density: {
    si: "kg/m³",
    shown: [unit("kg/m³", 1), unit("g/cm³", 1000), unit("lb/ft³", POUND / FOOT ** 3)],
    example: "1.19 kg/m³",
    chosenFor: "Density of air and of a solid",
    inch: "lb/ft³",
  },
  materialDensity: {
    si: "kg/m³",
    shown: [unit("g/cm³", 1000), unit("kg/m³", 1), unit("lb/in³", POUND / 0.0254 ** 3)],
    example: "1.24 g/cm³",
    chosenFor: "Density of what is printed",
  },
  stress: {
    si: "Pa",
    shown: [unit("MPa", 1e6), unit("Pa", 1), unit("psi", POUND_PER_SQUARE_INCH)],
    example: "35 MPa",
    chosenFor: "Strength",
    inch: "psi",
  },
  fraction: { si: "1", shown: [unit("%", 0.01), unit("1", 1)], example: "60 %" },
} as const satisfies Record<string, Omit<Dimension, "name">>;

export type DimensionName = keyof typeof table;

export const DIMENSION_NAMES = Object.keys(table) as readonly DimensionName[];

/** @returns the table row of a quantity, its name included */
export function dimension(name: DimensionName): Dimension {
  return { name, ...table[name] };
}
