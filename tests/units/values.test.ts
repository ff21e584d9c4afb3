import { describe, expect, it } from "vitest";
import { DIMENSION_NAMES, type DimensionName, dimension } from "#shared/units/dimensions.ts";
import { fromUnit } from "#shared/units/format.ts";
import { toSI } from "#shared/units/quantity.ts";
import { SPELLINGS, type Spelling } from "#shared/units/symbols.ts";

/** As printed: "3.386 389 E+03" is right to half of its last digit, "exact" beside a value has no more digits. */
type Printed = readonly [label: string, printed: string, exact?: "exact"];

/**
 * One unit in SI, as the outside defines it.
 * SI: BIPM, The International System of Units (SI Brochure), 9th ed., tables 4, 7 and 8.
 * US and other units: NIST SP 811 (2008), Appendix B.8, printed digits; those in bold there are exact.
 * A load typed as a mass is that mass at standard gravity, 9.806 65 m/s² (3rd CGPM, 1901).
 */
const TABLE: Readonly<Record<DimensionName, readonly Printed[]>> = {
  length: [
    ["mm", "1 E-03", "exact"],
    ["m", "1", "exact"],
    ["cm", "1 E-02", "exact"],
    ["µm", "1 E-06", "exact"],
    ["in", "2.54 E-02", "exact"],
    ["thou", "2.54 E-05", "exact"],
  ],
  roughness: [
    ["µm", "1 E-06", "exact"],
    ["mm", "1 E-03", "exact"],
    ["thou", "2.54 E-05", "exact"],
    ["in", "2.54 E-02", "exact"],
  ],
  height: [
    ["m", "1", "exact"],
    ["cm", "1 E-02", "exact"],
    ["ft", "3.048 E-01", "exact"],
    ["in", "2.54 E-02", "exact"],
  ],
  area: [
    ["cm²", "1 E-04", "exact"],
    ["mm²", "1 E-06", "exact"],
    ["m²", "1", "exact"],
    ["in²", "6.4516 E-04", "exact"],
  ],
  smallArea: [
    ["mm²", "1 E-06", "exact"],
    ["cm²", "1 E-04", "exact"],
    ["in²", "6.4516 E-04", "exact"],
  ],
  volume: [
    ["cm³", "1 E-06", "exact"],
    ["mm³", "1 E-09", "exact"],
    ["in³", "1.638 706 E-05"],
  ],
  mass: [
    ["g", "1 E-03", "exact"],
    ["kg", "1", "exact"],
    ["oz", "2.834 952 E-02"],
    ["lb", "4.535 924 E-01"],
  ],
  load: [
    ["g", "9.806 65 E-03", "exact"],
    ["N", "1", "exact"],
    ["kg", "9.806 65", "exact"],
    ["gf", "9.806 65 E-03", "exact"],
    ["kgf", "9.806 65", "exact"],
    ["oz", "2.780 139 E-01"],
    ["lb", "4.448 222"],
  ],
  heavyLoad: [
    ["kg", "9.806 65", "exact"],
    ["g", "9.806 65 E-03", "exact"],
    ["N", "1", "exact"],
    ["lb", "4.448 222"],
  ],
  pressure: [
    ["Pa", "1", "exact"],
    ["kPa", "1 E+03", "exact"],
    ["mmH2O", "9.806 65", "exact"],
    ["hPa", "1 E+02", "exact"],
    ["mbar", "1 E+02", "exact"],
    ["cmH2O", "9.806 65 E+01", "exact"],
    ["inH2O", "2.490 889 E+02"],
    ["inHg", "3.386 389 E+03"],
    ["psi", "6.894 757 E+03"],
  ],
  airPressure: [
    ["hPa", "1 E+02", "exact"],
    ["mbar", "1 E+02", "exact"],
    ["kPa", "1 E+03", "exact"],
    ["Pa", "1", "exact"],
    ["inHg", "3.386 389 E+03"],
    ["psi", "6.894 757 E+03"],
  ],
  flow: [
    ["L/s", "1 E-03", "exact"],
    ["L/min", "1.666 667 E-05"],
    ["m³/h", "2.777 778 E-04"],
    ["m³/s", "1", "exact"],
    ["cfm", "4.719 474 E-04"],
  ],
  speed: [
    ["rpm", "1.047 198 E-01"],
    ["rev/s", "6.283 185"],
    ["Hz", "6.283 185"],
    ["rad/s", "1", "exact"],
  ],
  voltage: [
    ["V", "1", "exact"],
    ["mV", "1 E-03", "exact"],
  ],
  current: [
    ["A", "1", "exact"],
    ["mA", "1 E-03", "exact"],
  ],
  resistance: [
    ["Ω", "1", "exact"],
    ["mΩ", "1 E-03", "exact"],
  ],
  smallResistance: [
    ["mΩ", "1 E-03", "exact"],
    ["Ω", "1", "exact"],
  ],
  kv: [["rpm/V", "1", "exact"]],
  torque: [
    ["mN·m", "1 E-03", "exact"],
    ["N·m", "1", "exact"],
    ["µN·m", "1 E-06", "exact"],
    ["oz·in", "7.061 552 E-03"],
  ],
  viscousTorque: [
    ["nN·m·s", "1 E-09", "exact"],
    ["N·m·s", "1", "exact"],
  ],
  stiffness: [
    ["N/mm", "1 E+03", "exact"],
    ["N/m", "1", "exact"],
    ["g/mm", "9.806 65", "exact"],
    ["lbf/in", "1.751 268 E+02"],
  ],
  power: [
    ["W", "1", "exact"],
    ["mW", "1 E-03", "exact"],
  ],
  charge: [
    ["mAh", "3.6", "exact"],
    ["Ah", "3.6 E+03", "exact"],
    ["C", "1", "exact"],
  ],
  temperature: [
    ["°C", "274.15", "exact"],
    ["K", "1", "exact"],
    ["°F", "255.927 8"],
  ],
  thermalResistance: [["K/W", "1", "exact"]],
  time: [
    ["s", "1", "exact"],
    ["min", "60", "exact"],
    ["h", "3.6 E+03", "exact"],
  ],
  duration: [
    ["min", "60", "exact"],
    ["s", "1", "exact"],
    ["h", "3.6 E+03", "exact"],
  ],
  angle: [
    ["°", "1.745 329 E-02"],
    ["rad", "1", "exact"],
  ],
  inclination: [
    ["°", "1", "exact"],
    ["rad", "5.729 578 E+01"],
  ],
  density: [
    ["kg/m³", "1", "exact"],
    ["g/cm³", "1 E+03", "exact"],
    ["lb/ft³", "1.601 846 E+01"],
  ],
  materialDensity: [
    ["g/cm³", "1 E+03", "exact"],
    ["kg/m³", "1", "exact"],
    ["lb/in³", "2.767 990 E+04"],
  ],
  stress: [
    ["MPa", "1 E+06", "exact"],
    ["Pa", "1", "exact"],
    ["psi", "6.894 757 E+03"],
  ],
  fraction: [
    ["%", "1 E-02", "exact"],
    ["1", "1", "exact"],
  ],
};

/** Rounding of a product or two in double precision. */
const ROUNDING = 4e-16;

function readPrinted(printed: string): { readonly value: number; readonly halfDigit: number } {
  const bare = printed.replace(/ (?=\d)/g, "").replace(" E", "e");
  const [digits, exponent = "0"] = bare.split("e");
  const decimals = digits.split(".")[1]?.length ?? 0;
  return { value: Number(bare), halfDigit: 0.5 * 10 ** (Number(exponent) - decimals) };
}

const ROWS = DIMENSION_NAMES.flatMap((name) =>
  TABLE[name].map(([label, printed, exact]) => [name, label, printed, exact === "exact"] as const),
);

describe("one unit of the table, as the outside defines it", () => {
  it.each(ROWS)("%s in %s is %s in SI", (name, label, printed, exact) => {
    const { value, halfDigit } = readPrinted(printed);
    const allowed = exact ? ROUNDING * value : halfDigit;
    expect(Math.abs(fromUnit(1, name, label) - value)).toBeLessThanOrEqual(allowed);
    expect(toSI({ value: 1, unit: label }, name)).toBe(fromUnit(1, name, label));
  });

  it("is checked for every row of the table", () => {
    const shown = DIMENSION_NAMES.flatMap((name) => dimension(name).shown.map(({ label }) => [name, label]));
    expect(ROWS.map(([name, label]) => [name, label])).toEqual(shown);
  });
});

/** Symbols that are read and not shown; source as above. "kgcm", "gcm", "Ncm" and "Nms" are products of exact factors. */
const READ: readonly Printed[] = [
  ["ft", "3.048 E-01", "exact"],
  ["yd", "9.144 E-01", "exact"],
  ["mil", "2.54 E-05", "exact"],
  ["cc", "1 E-06", "exact"],
  ["L", "1 E-03", "exact"],
  ["lps", "1 E-03", "exact"],
  ["lpm", "1.666 667 E-05"],
  ["cfs", "2.831 685 E-02"],
  ["t", "1 E+03", "exact"],
  ["kp", "9.806 65", "exact"],
  ["ozf", "2.780 139 E-01"],
  ["lbf", "4.448 222"],
  ["dyn", "1 E-05", "exact"],
  ["bar", "1 E+05", "exact"],
  ["atm", "1.013 25 E+05", "exact"],
  ["torr", "1.333 224 E+02"],
  ["mmHg", "1.333 224 E+02"],
  ["psf", "4.788 026 E+01"],
  ["d", "8.64 E+04", "exact"],
  ["rps", "6.283 185"],
  ["U", "6.283 185"],
  ["deg", "1.745 329 E-02"],
  ["gon", "1.570 796 E-02"],
  ["hp", "7.456 999 E+02"],
  ["ozin", "7.061 552 E-03"],
  ["kgcm", "9.806 65 E-02", "exact"],
  ["gcm", "9.806 65 E-05", "exact"],
  ["J", "1", "exact"],
  ["Nm", "1", "exact"],
  ["Ncm", "1 E-02", "exact"],
  ["Nms", "1", "exact"],
];

/** What a spelling measures and the digits of its value, whatever the power of ten. */
const digitsOf = ({ factor, signature }: Spelling): string =>
  `${signature.join()} ${(factor / 10 ** Math.floor(Math.log10(factor))).toPrecision(9)}`;

describe("a symbol that is read and not shown, as the outside defines it", () => {
  it.each(READ.map((row) => ({ row })))("$row.0 is $row.1 in SI", ({ row: [symbol, printed, exact] }) => {
    const { value, halfDigit } = readPrinted(printed);
    const found = SPELLINGS.filter(({ text }) => text === symbol);
    expect(found).toHaveLength(1);
    expect(Math.abs(found[0].factor - value)).toBeLessThanOrEqual(exact ? ROUNDING * value : halfDigit);
  });

  it("is checked for every way of writing a unit, its powers of ten aside", () => {
    const checked = new Set([...READ.map(([symbol]) => symbol), ...ROWS.map(([, label]) => label)]);
    const known = new Set(SPELLINGS.filter(({ text }) => checked.has(text)).map(digitsOf));
    const unchecked = SPELLINGS.filter((spelling) => !known.has(digitsOf(spelling)));
    expect(unchecked.map(({ text }) => text)).toEqual([]);
  });
});
