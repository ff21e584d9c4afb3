import { describe, expect, it } from "vitest";
import { isGood, type NumberSpec, readNumber } from "#shared/units/readNumber.ts";

const LENGTH: NumberSpec = { dimension: "length", limits: { positive: true, max: 2 } };
const CELLS: NumberSpec = { dimension: null, limits: { min: 1, max: 60, whole: true }, example: "3" };
const MARGIN: NumberSpec = { dimension: null, suffix: "×", limits: { min: 1, max: 20 }, example: "1.5" };
const HEIGHT: NumberSpec = {
  dimension: "pressure",
  unit: "hPa",
  limits: { min: 30e3, max: 120e3 },
  example: "990 hPa",
};

const said = (spec: NumberSpec, text: string) => {
  const reading = readNumber(spec, text);
  return isGood(reading) ? reading.value : reading.message;
};

describe("readNumber, what can be read", () => {
  it.each([
    ["a length in the unit meant", LENGTH, "38", 0.038],
    ["a length in its own", LENGTH, "1 1/2 in", 0.0381],
    ["a pressure in the unit meant", HEIGHT, "990", 99_000],
    ["a count", CELLS, " 3 ", 3],
    ["a bare number with its sign", MARGIN, "1,5 ×", 1.5],
    ["thousands", { dimension: null }, "28k", 28_000],
    ["the limit itself, by a unit whose factor is rounded", LENGTH, "2000 mm", 2],
  ] as const)("%s: is in SI", (_what, spec, text, expected) => {
    expect(said(spec, text)).toBeCloseToRelative(expected, 1e-15);
  });

  it("keeps number and unit as typed beside the SI value", () => {
    expect(readNumber(LENGTH, "3.8 cm")).toEqual({ value: 0.038, typed: { value: 3.8, unit: "cm" } });
    expect(readNumber(CELLS, "3")).toEqual({ value: 3, typed: { value: 3, unit: "" } });
  });
});

describe("readNumber, what is refused, in one message", () => {
  it.each([
    [LENGTH, "", 'Nothing was typed; allowed: more than 0, at most 2000\u202fmm, for example "38 mm".'],
    [
      LENGTH,
      "long",
      'There is no number in it. Read "long"; allowed: more than 0, at most 2000\u202fmm, for example "38 mm".',
    ],
    [
      LENGTH,
      "3 kg",
      '"kg" is no unit of length. Read "3 kg"; allowed: mm, m, cm, µm, in, thou, for example "38 mm".',
    ],
    [LENGTH, "0", 'Read "0"; allowed: more than 0, at most 2000\u202fmm, for example "38 mm".'],
    [LENGTH, "300 in", 'Read "300 in"; allowed: more than 0, at most 78.7\u202fin, for example "38 mm".'],
    [
      LENGTH,
      "110×90 mm",
      'Two numbers stand in it; one is asked for. Read "110×90 mm"; allowed: more than 0, at most 2000\u202fmm, for example "38 mm".',
    ],
    [CELLS, "2.5", 'Read "2.5"; allowed: a whole number, 1 to 60, for example "3".'],
    [CELLS, "two", 'That is no number here. Read "two"; allowed: a whole number, 1 to 60, for example "3".'],
    [MARGIN, "0.2", 'Read "0.2"; allowed: 1\u202f× to 20\u202f×, for example "1.5".'],
    [
      MARGIN,
      "1.5 kg",
      'That is no number here. Read "1.5 kg"; allowed: 1\u202f× to 20\u202f×, for example "1.5".',
    ],
    [
      HEIGHT,
      "12 kg",
      '"kg" is no unit of pressure. Read "12 kg"; allowed: Pa, kPa, mmH2O, hPa, mbar, cmH2O, inH2O, inHg, psi, for example "990 hPa".',
    ],
    [HEIGHT, "12 hPa", 'Read "12 hPa"; allowed: 300\u202fhPa to 1200\u202fhPa, for example "990 hPa".'],
    [
      { dimension: "mass" },
      "Infinity",
      'There is no number in it. Read "Infinity"; allowed: g, kg, oz, lb, for example "138 g".',
    ],
    [
      { dimension: null },
      "1e999",
      'That is no number here. Read "1e999"; allowed: a number, for example "2".',
    ],
  ] as const)("%o, %j", (spec, text, message) => {
    expect(said(spec, text)).toBe(message);
  });
});
