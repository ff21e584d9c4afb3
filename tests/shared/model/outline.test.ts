import { describe, expect, it } from "vitest";
import { contradictionsWithin } from "#shared/model/contradictionsWithin.ts";
import { outlineOf } from "#shared/model/parts/outlineOf.ts";
import { COLLECTIONS } from "#shared/model/schemas.ts";

const mm = (value: number) => ({ value, unit: "mm" });

describe("outlineOf, a rectangle with round corners", () => {
  it("with sharp corners is the rectangle itself, to rounding", () => {
    const { perimeter, area, longestSide } = outlineOf({ length: mm(110), width: mm(90) });
    expect([perimeter, area, longestSide]).toEqual([
      expect.closeTo(0.4, 12),
      expect.closeTo(0.0099, 12),
      expect.closeTo(0.11, 12),
    ]);
  });

  it("with a radius of half a square's side is the circle, to rounding", () => {
    const { perimeter, area, longestSide } = outlineOf({
      length: mm(80),
      width: mm(80),
      cornerRadius: mm(40),
    });
    expect(perimeter).toBeCloseToRelative(Math.PI * 0.08, 1e-12);
    expect(area).toBeCloseToRelative(Math.PI * 0.04 ** 2, 1e-12);
    expect(longestSide).toBeCloseTo(0, 12);
  });

  // by hand: P = 400 − 96 + 24π mm, A = 9900 − 576 + 144π mm²
  it("with a radius of 12 mm is what straight sides and four quarter circles add up to", () => {
    const { perimeter, area, longestSide } = outlineOf({
      length: mm(90),
      width: mm(110),
      cornerRadius: mm(12),
    });
    expect(perimeter).toBeCloseToRelative((304 + 24 * Math.PI) * 1e-3, 1e-12);
    expect(area).toBeCloseToRelative((9324 + 144 * Math.PI) * 1e-6, 1e-12);
    expect(longestSide).toBeCloseTo(0.086, 12);
  });
});

describe("a skirt with an outline", () => {
  const outline = { length: mm(110), width: mm(90), cornerRadius: mm(12) };
  const { perimeter, area } = outlineOf(outline);
  const skirt = { name: "Square lip", perimeter, area, land: 0.003, gap: 0.0006, outline };

  it("is kept as typed, with the figures that follow", () => {
    const parsed = COLLECTIONS.skirts.parse(skirt);
    expect(parsed.outline).toEqual(outline);
    expect(contradictionsWithin("skirts", parsed)).toEqual([]);
  });

  it("is refused with another area beside it, which names the one that follows", () => {
    const found = contradictionsWithin("skirts", COLLECTIONS.skirts.parse({ ...skirt, area: 0.009 }));
    expect(found.map(({ path }) => path)).toEqual(["area"]);
    expect(found[0].message).toContain("97.764\u202fcm²");
  });

  it("is refused at the unit that can't be read, its corners not judged", () => {
    const outline = { length: { value: 110, unit: "" }, width: mm(38), cornerRadius: mm(38) };
    const { error } = COLLECTIONS.skirts.safeParse({ ...skirt, outline });
    expect(error?.issues.map(({ path }) => path.join("."))).toEqual(["outline.length.unit"]);
  });

  it("is refused with corners rounder than its shorter side", () => {
    const round = { ...outline, cornerRadius: mm(46) };
    expect(COLLECTIONS.skirts.safeParse({ ...skirt, outline: round }).success).toBe(false);
  });
});
