import { describe, expect, it } from "vitest";
import { readRectangle, rectangleText } from "#shared/units/rectangle.ts";

const mm = (value: number) => ({ value, unit: "mm" });
const inch = (value: number) => ({ value, unit: "in" });

describe("readRectangle", () => {
  it.each([
    ["110 × 90 mm", { length: mm(110), width: mm(90) }],
    ["110x90", { length: mm(110), width: mm(90) }],
    ["110 mm × 90", { length: mm(110), width: mm(90) }],
    ["110,5 × 90 mm", { length: mm(110.5), width: mm(90) }],
    ["4 1/2 x 3 in", { length: inch(4.5), width: inch(3) }],
    ["4½ by 3 in, r ½", { length: inch(4.5), width: inch(3), cornerRadius: inch(0.5) }],
    ["110 × 90 mm, r 12", { length: mm(110), width: mm(90), cornerRadius: mm(12) }],
    [
      "110 × 90 mm (radius 1.2 cm)",
      { length: mm(110), width: mm(90), cornerRadius: { value: 1.2, unit: "cm" } },
    ],
    ["110 mm × 3.5 in R12 mm", { length: mm(110), width: inch(3.5), cornerRadius: mm(12) }],
  ])("reads %j as typed, a side without a unit in the other's", (text, typed) => {
    expect(readRectangle(text)).toEqual(typed);
    const read = readRectangle(text);
    if ("message" in read) throw new Error(read.message);
    expect(readRectangle(rectangleText(read))).toEqual(typed);
  });

  it.each([
    ["110 mm", /allowed: two sides/],
    ["110 × 90 g", /no unit of length/],
    ["110 × 0 mm", /A side is more than 0/],
    ["110 × 90 mm, r 46 mm", /at most half of the shorter side/],
    ["110 × 90 × 3 mm", /Read "110 × 90 × 3 mm"/],
  ])("refuses %j with what was read and an example", (text, message) => {
    const read = readRectangle(text);
    expect("message" in read ? read.message : "").toMatch(message);
    expect("message" in read ? read.message : "").toContain('for example "110 × 90 mm, r 12 mm"');
  });
});
