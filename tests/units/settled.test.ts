import { describe, expect, it } from "vitest";
import type { DimensionName } from "#shared/units/dimensions.ts";
import { isGood, readNumber } from "#shared/units/readNumber.ts";
import { settledText } from "#shared/units/settled.ts";

const settled = (text: string, dimension: DimensionName | null, unit?: string) =>
  settledText({ dimension, unit }, text);

describe("settledText, a field that is left", () => {
  it.each([
    ["14", "pressure", "mmH2O", "14 mmH2O"],
    ["0,4 psi", "pressure", "mmH2O", "0,4 psi"],
    ["12mmH2O", "pressure", undefined, "12mmH2O"],
    ["38", "pressure", undefined, "38 Pa"],
    ["1.19 kg/m3", "density", undefined, "1.19 kg/m3"],
    ["28k", "speed", undefined, "28k rpm"],
    ["28k rpm", "speed", undefined, "28k rpm"],
    ["1 lb 3 oz", "mass", undefined, "1 lb 3 oz"],
    ["1 1/2", "length", "in", "1 1/2 in"],
    ["0.7", "fraction", "1", "0.7 1"],
    ["0.7 1", "fraction", "1", "0.7 1"],
    ["abc", "pressure", undefined, "abc"],
    ["", "pressure", undefined, ""],
    ["1.5", null, undefined, "1.5"],
  ] as const)("%j as %s, in %j unless typed, says %j", (text, dimension, unit, expected) => {
    expect(settled(text, dimension, unit)).toBe(expected);
  });

  it.each([
    ["38", "length"],
    ["28k", "speed"],
    ["½", "length"],
    ["1 lb 3 oz", "load"],
    ["1/2", "fraction"],
  ] as const)("%j as %s: means the same as before, and stays as it is once more", (text, dimension) => {
    const once = settled(text, dimension);
    const [before, after] = [text, once].map((each) => readNumber({ dimension }, each));
    expect(isGood(before) && isGood(after) && after.value === before.value).toBe(true);
    expect(settled(once, dimension)).toBe(once);
  });
});
