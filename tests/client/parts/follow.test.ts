import { describe, expect, it } from "vitest";
import { type Draft, draftOf, readForm } from "#client/views/parts/draft.ts";
import { followsFrom, withFollowing } from "#client/views/parts/follow.ts";
import { skirtForm } from "#client/views/parts/specs/skirt.ts";

const typed = (outline: string): Draft =>
  withFollowing(skirtForm, { ...draftOf(skirtForm, {}).values, outline });

describe("withFollowing, the skirt's rectangle", () => {
  it("writes length and area that follow, and stores the rectangle as typed", () => {
    const values: Draft = { ...typed("110 × 90 mm"), name: "Lip", land: "3 mm", gap: "0.6 mm" };
    expect([values.perimeter, values.area]).toEqual(["400 mm", "99 cm²"]);
    const { data, refused } = readForm(skirtForm, { values, rows: {} });
    expect(refused).toEqual([]);
    expect(data.outline).toEqual({ length: { value: 110, unit: "mm" }, width: { value: 90, unit: "mm" } });
    expect(followsFrom(skirtForm, "area", values)?.path).toBe("outline");
  });

  it.each(["", "110", "110 × 90 g"])("leaves length and area to be typed with %j in it", (outline) => {
    const values = typed(outline);
    expect([values.perimeter, values.area]).toEqual(["", ""]);
    expect(followsFrom(skirtForm, "area", values)).toBeNull();
  });

  it("refuses a rectangle that can't be read beside its own field", () => {
    const { refused } = readForm(skirtForm, { values: typed("110 × 90 g"), rows: {} });
    expect(refused.find(({ path }) => path === "outline")?.message).toMatch(/no unit of length/);
  });
});
