import { describe, expect, it } from "vitest";
import { sharedInput } from "#shared/decide/shared.ts";
import { uncertainInputs } from "#shared/decide/uncertainInput.ts";
import { scrambledSobol } from "#shared/numeric/sobol.ts";

/**
 * Ten resistors of 1000 Ω in series, each compared with one and the same standard resistor that is known to u = 100 mΩ. Their
 * errors are one error: the whole is known to 10·u = 1 Ω, not to √10·u = 0.32 Ω.
 * Source: JCGM 100:2008 (GUM), 5.2.2, the example; its figures from memory, both are also plain from the sums.
 */
const COUNT = 2048;
const RESISTORS = Array.from({ length: 10 }, (_, i) => `r.${i}`);
const built = () => ({ r: RESISTORS.map(() => 1000) });

function spread(draw: (write: (i: number) => void, copy: { r: number[] }) => void): number {
  const copy = built();
  const sums: number[] = [];
  draw(() => sums.push(copy.r.reduce((sum, each) => sum + each, 0)), copy);
  const mean = sums.reduce((sum, each) => sum + each, 0) / COUNT;
  return Math.sqrt(sums.reduce((sum, each) => sum + (each - mean) ** 2, 0) / COUNT);
}

describe("one standard behind ten resistors in series", () => {
  it("as a shared cause: 1 Ω", () => {
    const u = spread((keep, copy) => {
      const effects = RESISTORS.map((path) => ({ path, by: 0.1 }));
      const inputs = uncertainInputs(copy, { uncertainty: {}, shared: [{ name: "the standard", effects }] });
      const uniform = scrambledSobol(COUNT, 1, 1);
      for (let i = 0; i < COUNT; i++) {
        for (const { write } of inputs) write(uniform, i, new Float64Array(1));
        keep(i);
      }
    });
    expect(u).toBeCloseToRelative(1, 5e-3);
  });

  it("as ten uncertainties of their own: 0.32 Ω, which is the wrong answer", () => {
    const u = spread((keep, copy) => {
      const uncertainty = Object.fromEntries(RESISTORS.map((path) => [path, 0.1]));
      const inputs = uncertainInputs(copy, { uncertainty });
      const uniform = scrambledSobol(COUNT, 10, 1);
      for (let i = 0; i < COUNT; i++) {
        inputs.forEach(({ write }, k) => {
          write(uniform, 10 * i + k, new Float64Array(1));
        });
        keep(i);
      }
    });
    expect(u).toBeCloseTo(0.32, 2);
  });

  it("a cause that bears the name of a number is refused", () => {
    expect(() => sharedInput(built(), { name: "r.0", effects: [] }, "shared.0")).toThrow(/no path/);
  });
});
