import { describe, expect, it } from "vitest";
import { roughnessText, roughnessWords } from "#client/ui/roughnessWords.ts";
import type { SurfaceRoughness } from "#shared/book/roughnessBasis.ts";

const told: SurfaceRoughness = {
  basis: "measured separately",
  value: 1.148e-4,
  sd: 6.9e-6,
  testIds: ["a", "b"],
  against: null,
  told: null,
  missing: null,
};

describe("roughnessWords", () => {
  it("of a roughness measured separately: value, doubt, by how many tests, and what is stated", () => {
    expect(roughnessWords(told, 1.2e-4)).toBe(
      "115 ± 7\u202fµm, measured separately by 2 leak tests (stated 120\u202fµm)",
    );
  });

  it("of a stated one, and where none is taken: nothing", () => {
    expect(roughnessWords({ ...told, basis: "stated", testIds: [] }, 1.2e-4)).toBeNull();
    expect(roughnessWords(null, 1.2e-4)).toBeNull();
  });
});

describe("roughnessText", () => {
  it.each([
    [1.48e-4, null, "148\u202fµm"],
    [1.48e-4, 2e-7, "148 ± 1\u202fµm"],
  ])("of %f m ± %f m: whole roughnessText, an uncertainty of one at least", (value, sd, text) => {
    expect(roughnessText(value, sd)).toBe(text);
  });
});
