import { describe, expect, it } from "vitest";
import { listedAttitudes, worstName } from "#shared/decide/verdict/attitudeWords.ts";

describe("names of attitudes", () => {
  it("names attitudes, up to five, each; of a dozen the first three and how many others", () => {
    const names = Array.from({ length: 12 }, (_, i) => `pane ${i + 1}`);
    expect(listedAttitudes(names.slice(0, 5), "or")).toBe("pane 1, pane 2, pane 3, pane 4 or pane 5");
    expect(listedAttitudes(names, "or")).toBe("pane 1, pane 2, pane 3 or 9 other attitudes");
  });

  it.each([
    [90, "the wall"],
    [180, "the ceiling"],
    [127, "the overhang"],
    [60, "the slope"],
    [0, "the floor"],
  ])("calls %s°, as a worst attitude, %s", (angle, name) => {
    expect(worstName(angle)).toBe(name);
  });
});
