import { describe, expect, it } from "vitest";
import { formatFixed, formatQuantity, fromUnit, inUnit } from "#shared/units/format.ts";

describe("formatQuantity, by significant digits and by uncertainty", () => {
  it("shows three digits unless told", () => {
    expect(formatQuantity(0.00061234, "length")).toBe("0.612\u202fmm");
    expect(formatQuantity(34 * (Math.PI / 180), "angle")).toBe("34.0°");
  });

  it("shows two digits of the uncertainty", () => {
    expect(formatQuantity(1948.31, "pressure", { uncertainty: 34 })).toBe("1948\u202fPa");
    expect(formatQuantity(0.0006, "length", { uncertainty: 0.0001 })).toBe("0.60\u202fmm");
  });

  it("sets thin spaces from five digits on and a true minus sign", () => {
    expect(formatFixed(29633.4, 0)).toBe("29\u202f633");
    expect(formatFixed(-3, 2)).toBe("\u22123.00");
    expect(formatFixed(-0.001, 1)).toBe("0.0");
  });

  it("shows a dash for what is no number", () => {
    expect(formatFixed(Number.NaN, 2)).toBe("–");
  });
});

describe("inUnit and fromUnit, one after the other", () => {
  it("give the value back, temperatures included", () => {
    expect(inUnit(291.15, "temperature")).toBeCloseTo(18, 10);
    expect(fromUnit(18, "temperature")).toBeCloseTo(291.15, 10);
    expect(fromUnit(inUnit(1234, "pressure", "psi"), "pressure", "psi")).toBeCloseTo(1234, 9);
  });
});
