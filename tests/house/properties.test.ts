import fc from "fast-check";
import { describe, expect, it } from "vitest";

describe("a property that fails", () => {
  // Without a limit the search for a smaller counterexample among many numbers goes on for hours.
  it("has a limit to its search for a smaller counterexample, and fails where the limit is met", () => {
    const { interruptAfterTimeLimit, markInterruptAsFailure } = fc.readConfigureGlobal();
    expect(interruptAfterTimeLimit).toBeLessThanOrEqual(90_000);
    expect(markInterruptAsFailure).toBe(true);
  });

  it("ends at the limit and says the counterexample it has, though smaller ones could be sought without end", () => {
    const many = fc.array(fc.integer({ min: 0, max: 1e9 }), { minLength: 40, maxLength: 40 });
    const found = fc.check(
      fc.property(many, (numbers) => numbers.reduce((sum, each) => sum + (each % 7), 0) < 100),
      { interruptAfterTimeLimit: 100 },
    );
    expect(found.failed).toBe(true);
    expect(found.counterexample?.[0]).toHaveLength(40);
  });
});
