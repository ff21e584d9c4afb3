import { describe, expect, it } from "vitest";
import { coveredBy } from "#tests/coverage/covered.ts";
import { SCENARIOS } from "#tests/coverage/scenarios.ts";
import { demoBook } from "#tests/support/demoBook.ts";

/** A short run of what `npm run coverage` does in full: of makers by chance, how many find the truth in their band. */
const MAKERS = 10;

describe("the band of a prediction, held to account by simulated makers", () => {
  it.each([["large gains and five pulls", "large gains, five pulls"]])(
    "with %s: holds the truth for all but a few, its middle is where the truth is",
    (_, name) => {
      const scenario = SCENARIOS.find((each) => each.name === name);
      if (!scenario) throw new Error(`no scenario ${name}`);
      const { inside, bias, width } = coveredBy(demoBook(), scenario, MAKERS);
      // Eight of ten or more: of other seeds a band that holds 90 % passes 93 times in a hundred, one of 56 % ten times.
      expect(inside).toBeGreaterThanOrEqual(8 / MAKERS);
      expect(Math.abs(bias)).toBeLessThan(width / 2);
      expect(width).toBeLessThan(0.15);
    },
    60_000,
  );
});
