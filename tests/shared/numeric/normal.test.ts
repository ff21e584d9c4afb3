import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { OutOfRangeError } from "#shared/numeric/errors.ts";
import { logNormalInterval, normalCdf, normalDensity } from "#shared/numeric/normal.ts";
import { normalQuantile } from "#shared/numeric/normalQuantile.ts";

// Expected values: mpmath 1.3 at 60 digits, rounded to double: erfc(−x/√2)/2, its logarithm, their differences.
const CDF = [
  [-37.5, 4.605353009581955e-308, -707.6689893175072],
  [-36.1, 1.1340034358936236e-285, -656.1109972681135],
  [-33.3, 1.93050550592784e-243, -558.8703957087615],
  [-27.7, 3.4910784528195237e-169, -387.88667001524465],
  [-23.9, 1.531368304223915e-126, -289.6995600650219],
  [-20.3, 6.429244467698346e-92, -209.97697152524202],
  [-8.1, 2.7479593923982286e-16, -35.83050289080147],
  [-5.7, 5.990371401063528e-9, -18.933112423224742],
  [-3.3, 0.0004834241423837775, -7.634616148071127],
  [-1.9, 0.028716559816001807, -3.5502813255421346],
  [-0.7, 0.24196365222307303, -1.4189677615315315],
  [-0.66, 0.25462691467133614, -1.3679558848901994],
  [-0.3, 0.3820885778110474, -0.9621028181688507],
  [0, 0.5, -Math.LN2],
  [0.3, 0.6179114221889527, -0.4814101615884812],
  [0.67, 0.7485711049046899, -0.289589083101687],
  [1.1, 0.8643339390536173, -0.14579608131705274],
  [2.5, 0.9937903346742238, -0.006229025485860002],
  [6.2, 0.9999999997176842, -2.823158037441782e-10],
] as const;
const INTERVALS = [
  [-1, 1, -0.38171514630212605],
  [2, 2.0001, -12.129378905178662],
  [8, 9, -35.01361859343715],
  [-40, -39.5, -784.720879106624],
  [20, Number.POSITIVE_INFINITY, -203.91715537109727],
  [Number.NEGATIVE_INFINITY, -3, -6.607726221510349],
  [-0.2, 5, -0.5460048485813637],
  [0, 0.3, -2.1378215958179827],
  [30, 30.001, -457.8416564778848],
  [-6, 7, -9.87867458069525e-10],
  [0.5, 0.5 + 2 ** -30, -21.838353950235863],
  [1, 1.4, -2.5523473660924676],
  [-0.36, 0.36, -1.2688567488984868],
  [9, 9.09, -44.20578077199707],
  [-0.25, 0.45, -1.3006632164311007],
  [0.2, 2.9, -0.8701839808860192],
  [-1.5, -0.1, -0.9330174429467271],
  [-4.5, -2, -3.783333692238482],
] as const;
const QUANTILES = [
  [1e-300, -37.0470962993612],
  [1e-100, -21.273453560965326],
  [1e-17, -8.493793224109599],
  [1e-9, -5.9978070150076865],
  [0.001, -3.0902323061678136],
  [0.0749, -1.4402382675279637],
  [0.0751, -1.43882539275254],
  [0.3, -0.5244005127080408],
  [0.501, 0.002506630899571766],
  [0.77, 0.7388468491852137],
  [0.975, 1.9599639845400538],
  [0.999, 3.090232306167813],
] as const;

describe("normal distribution, against 60-digit arithmetic", () => {
  it.each(CDF)("share and its logarithm below %s, in the tails as well", (x, share, logarithm) => {
    expect(normalCdf(x)).toBeCloseToRelative(share, 3e-15);
    expect(logNormalInterval(Number.NEGATIVE_INFINITY, x)).toBeCloseToRelative(logarithm, 3e-15);
  });

  it.each([
    [-1e4, -50000010.12927891],
    [-150.5, -11331.057945762144],
  ])("logarithm of the share below %s, where the share itself is 0", (x, logarithm) => {
    expect(normalCdf(x)).toBe(0);
    expect(logNormalInterval(Number.NEGATIVE_INFINITY, x)).toBeCloseToRelative(logarithm, 3e-15);
  });

  it.each(INTERVALS)("logarithm of the share from %s to %s", (lo, hi, logarithm) => {
    expect(logNormalInterval(lo, hi)).toBeCloseToRelative(logarithm, 4e-15);
    expect(logNormalInterval(-hi, -lo)).toBeCloseToRelative(logarithm, 4e-15);
  });

  it.each(QUANTILES)("quantile of %s", (p, z) => {
    expect(normalQuantile(p)).toBeCloseToRelative(z, p > 0.5 ? 2e-14 : 2e-15);
  });
});

describe("normal distribution, at its ends and by its own relations", () => {
  it("has exact ends and an exact middle", () => {
    expect(normalCdf(Number.NEGATIVE_INFINITY)).toBe(0);
    expect(normalCdf(Number.POSITIVE_INFINITY)).toBe(1);
    expect(logNormalInterval(Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY)).toBeCloseTo(0, 15);
    expect(normalDensity(Number.POSITIVE_INFINITY)).toBe(0);
    expect(normalDensity(0)).toBeCloseToRelative(1 / Math.sqrt(2 * Math.PI), 1e-15);
    expect(normalQuantile(0.5)).toBe(0);
  });

  it("passes NaN on as it is", () => {
    expect(normalCdf(Number.NaN)).toBeNaN();
  });

  it("gives back p from its quantile", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-12, max: 0.5, noNaN: true }), (p) => {
        expect(normalCdf(normalQuantile(p))).toBeCloseToRelative(p, 1e-13);
      }),
    );
  });

  it("has a density that is the slope of the share", () => {
    const slope = (normalCdf(-1.2 + 1e-5) - normalCdf(-1.2 - 1e-5)) / 2e-5;
    expect(normalDensity(-1.2)).toBeCloseToRelative(slope, 1e-9);
  });

  it.each([0, 1, -0.1, Number.NaN])("refuses the quantile of %s", (p) => {
    expect(() => normalQuantile(p)).toThrow(OutOfRangeError);
  });

  it("refuses an interval without width", () => {
    expect(() => logNormalInterval(1, 1)).toThrow(OutOfRangeError);
    expect(() => logNormalInterval(Number.NaN, 1)).toThrow(OutOfRangeError);
  });
});
