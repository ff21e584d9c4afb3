import { afterEach, describe, expect, it } from "vitest";
import { asRead, markOfLanguage, setDecimalMark } from "#shared/units/decimalMark.ts";
import { formatFixed, formatQuantity } from "#shared/units/format.ts";
import { parseNumber } from "#shared/units/number.ts";
import { exampleOf, readNumber } from "#shared/units/readNumber.ts";
import { pointText, typedText } from "#shared/units/shown.ts";

afterEach(() => setDecimalMark("."));

describe("the decimal mark of the reader's language", () => {
  it("is the comma in German and French, the point in English and where neither is written", () => {
    expect(["de-DE", "fr-FR", "nl", "en-GB", "en-US", "fa-IR"].map(markOfLanguage)).toEqual([
      ",",
      ",",
      ",",
      ".",
      ".",
      ".",
    ]);
  });

  it("with a comma: stands in every number shown, with thin spaces between thousands as before", () => {
    setDecimalMark(",");
    expect(formatFixed(-12345.678, 2)).toBe("\u221212\u202f345,68");
    expect(formatQuantity(6.06e-4, "length", { unit: "mm" })).toBe("0,606\u202fmm");
    expect(asRead("44.0")).toBe("44,0");
  });

  it("with a comma: stands in what a field is filled with and in its example, and reads back; addresses keep the point", () => {
    setDecimalMark(",");
    expect(typedText(6.06e-4, "length")).toBe("0,606 mm");
    expect(readNumber({ dimension: "length" }, typedText(6.06e-4, "length"))).toMatchObject({
      value: 6.06e-4,
    });
    expect(exampleOf({ dimension: "length", example: "0.6 mm" })).toBe("0,6 mm");
    expect(exampleOf({ dimension: null, example: "0.61" })).toBe("0,61");
    expect(pointText(6.06e-4, "length")).toBe("0.606 mm");
  });

  it("with a comma: what is shown can be typed back, and a point is read as well", () => {
    setDecimalMark(",");
    expect(parseNumber("1,234")).toBe(1.234);
    expect(parseNumber("1.234")).toBe(1.234);
    expect(parseNumber("12,5")).toBe(12.5);
  });

  it("with a point: three digits behind a comma stay refused, since they may be thousands", () => {
    expect(parseNumber("1,234")).toBeNull();
    expect(parseNumber("12,5")).toBe(12.5);
    expect(asRead("44.0")).toBe("44.0");
  });
});
