import { describe, expect, it } from "vitest";
import { roughnessText, separatelyWords } from "#client/ui/roughnessWords.ts";

describe("separatelyWords", () => {
  it("of a roughness measured separately: by how many tests, and what is stated", () => {
    expect(separatelyWords({ testIds: ["a", "b"] }, 1.2e-4)).toBe(
      "measured separately by 2 leak tests (stated 120\u202fµm)",
    );
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
