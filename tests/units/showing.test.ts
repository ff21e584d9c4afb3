import { afterEach, describe, expect, it } from "vitest";
import { figureIn, formatQuantity } from "#shared/units/format.ts";
import { limitsInWords } from "#shared/units/limits.ts";
import { parseQuantity } from "#shared/units/parse.ts";
import { exampleOf } from "#shared/units/readNumber.ts";
import { settledText } from "#shared/units/settled.ts";
import {
  decimalsOf,
  differenceUnitOf,
  headed,
  type ShownUnits,
  showUnitsOf,
  UNIT_SETS,
  unitOf,
} from "#shared/units/showing.ts";
import { decimalsShown, labelWithUnit, typedText } from "#shared/units/shown.ts";

const plain = (text: string) => text.replace(/\u202f/g, " ");
const showing = (units: ShownUnits) => showUnitsOf(() => units);

afterEach(() => showing(UNIT_SETS.metric));

describe("a quantity in a book of the inch set", () => {
  // Hand calculation: 0.6 mm / 25.4 = 0.023 622 in; 893 g / 28.349 523 = 31.50 oz; 1234 Pa / 249.0889 = 4.954 inH2O
  it.each([
    ["length", 0.6e-3, 2, "0.0236 in"],
    ["load", 0.893 * 9.80665, 0, "31.50 oz"],
    ["pressure", 1234, 0, "4.954 inH2O"],
    ["temperature", 373.15, 0, "212 °F"],
    ["speed", 1000 * (Math.PI / 30), 0, "1000 rpm"],
  ] as const)("%s, as fine as in its first unit: %s to %s decimals is %s", (name, si, decimals, text) => {
    showing(UNIT_SETS.inch);
    expect(plain(formatQuantity(si, name, { decimals }))).toBe(text);
  });

  it("with an uncertainty is shown to that uncertainty's two digits in the unit shown", () => {
    showing(UNIT_SETS.inch);
    // 0.04 mm are 0.001 575 in
    expect(plain(formatQuantity(0.6e-3, "length", { uncertainty: 0.04e-3 }))).toBe("0.0236 in");
    expect(plain(formatQuantity(0.6e-3, "length", { uncertainty: 0.4e-3 }))).toBe("0.024 in");
  });

  it("keeps three significant digits without one", () => {
    showing(UNIT_SETS.inch);
    expect(plain(formatQuantity(4.2e-3, "flow"))).toBe("8.90 cfm");
  });

  it("stands so in limits, in headings and beside a field, and a bare number is meant so", () => {
    showing(UNIT_SETS.inch);
    expect(plain(limitsInWords({ min: 0, max: 0.0254 }, { dimension: "length" }))).toBe("0 in to 1 in");
    expect(headed("flow", "flow")).toBe("flow, cfm");
    expect(labelWithUnit("Gap", { dimension: "length" })).toBe("Gap, in");
    expect(parseQuantity("1 1/2", "length")).toEqual({ value: 1.5, unit: "in" });
    expect(settledText({ dimension: "length" }, "1.5")).toBe("1.5 in");
    expect(exampleOf({ dimension: "length", example: "38 mm" })).toBe("1.5 in");
  });

  it("that was typed with another unit, reads as that", () => {
    showing(UNIT_SETS.inch);
    expect(parseQuantity("38 mm", "length")).toEqual({ value: 38, unit: "mm" });
  });
});

describe("what is stored in SI, as it would be typed", () => {
  it("comes back in the first unit where it was plainly typed in that one, else in the unit shown", () => {
    showing(UNIT_SETS.inch);
    expect(typedText(0.038, "length")).toBe("38 mm");
    expect(typedText(0.0381, "length")).toBe("1.5 in");
    expect(typedText(0.012345678, "length")).toBe("0.486050314961 in");
    expect(typedText(0.038, "length", 4)).toBe("1.496 in");
  });
});

describe("decimals in the unit shown", () => {
  it("are as many where the first unit is shown, none too few in a larger one, none below 0", () => {
    expect(decimalsOf("length", 2)).toBe(2);
    showing({ length: "in", speed: "Hz", pressure: "kPa" });
    expect(decimalsOf("length", 2)).toBe(4);
    expect(decimalsOf("pressure", 0)).toBe(3);
    expect(decimalsOf("speed", -2)).toBe(0);
    expect(decimalsShown({ dimension: "length", unit: "mm" }, 2)).toBe(2);
    expect(decimalsShown({ dimension: null }, 2)).toBe(2);
  });
});

describe("units chosen one by one", () => {
  it("leave the others as they are; one that the quantity does not have is the first", () => {
    showing({ flow: "L/min", length: "parsec" });
    expect([unitOf("flow"), unitOf("length"), unitOf("mass")]).toEqual(["L/min", "mm", "g"]);
    expect(figureIn(4.2e-3, "flow", 2)).toBe("252");
  });

  it("a roughness keeps its own beside that of lengths", () => {
    showing({ length: "in" });
    expect(plain(formatQuantity(30e-6, "roughness"))).toBe("30.0 µm");
  });

  it("a difference of temperatures in °C is said in kelvin", () => {
    expect(differenceUnitOf("temperature")).toBe("K");
    showing(UNIT_SETS.inch);
    expect(differenceUnitOf("temperature")).toBe("°F");
  });
});
