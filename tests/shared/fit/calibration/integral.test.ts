import { describe, expect, it } from "vitest";
import { integrate } from "#shared/fit/calibration/integral.ts";

/** Student's t with ten degrees of freedom, by itself: ∫ = √(10π)·Γ(5)/Γ(5.5), variance 10/8; its tails are longer than a normal one's. */
const student = (x: number) => -5.5 * Math.log(1 + x ** 2 / 10);
const WHOLE = (Math.sqrt(10 * Math.PI) * 24) / 52.34277778455352;
const VARIANCE = 10 / 8;

function variance(places: readonly { readonly x: readonly number[]; readonly share: number }[]): number {
  const mean = places.reduce((sum, { x, share }) => sum + share * x[0], 0);
  return places.reduce((sum, { x, share }) => sum + share * (x[0] - mean) ** 2, 0);
}

describe("integrate", () => {
  it("of Student's density, one variable: integral and variance, the tails beyond six standard deviations in", () => {
    const { log, places } = integrate(([x]) => student(x - 0.3), [0], [1]);
    expect(Math.exp(log)).toBeCloseToRelative(WHOLE, 3e-4);
    expect(variance(places)).toBeCloseToRelative(VARIANCE, 2e-3);
  });

  it("of Student's and a normal density, two variables: integral and variance", () => {
    const { log, places } = integrate(([x, y]) => student(x) - (y - 0.2) ** 2 / 2, [0, 0], [1, 1]);
    expect(Math.exp(log)).toBeCloseToRelative(WHOLE * Math.sqrt(2 * Math.PI), 3e-4);
    expect(variance(places)).toBeCloseToRelative(VARIANCE, 2e-3);
  });

  it("of a normal density: no more places than within six standard deviations", () => {
    const { places } = integrate(([x]) => (-x * x) / 2, [0.1], [1]);
    expect(places).toHaveLength(11);
    expect(variance(places)).toBeCloseToRelative(1, 1e-4);
  });
});
