import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cutNormal } from "#shared/decide/cutNormal.ts";
import { limitsOf } from "#shared/decide/physicalLimits.ts";
import { shareError } from "#shared/decide/spread.ts";
import { uncertaintyOf } from "#shared/decide/uncertainty.ts";
import { varianceShares } from "#shared/decide/varianceShares.ts";
import { NotEnoughDataError } from "#shared/numeric/errors.ts";
import { normalQuantile } from "#shared/numeric/normalQuantile.ts";
import { scrambledSobol } from "#shared/numeric/sobol.ts";
import { predict } from "#shared/physics/predict.ts";
import { predictPropeller } from "#shared/physics/propeller.ts";
import { bruteForceMargins } from "#tests/support/bruteForce.ts";
import { expectAllFinite } from "#tests/support/finite.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";
import { PANE_CRAWLER, PANE_PROPELLER } from "#tests/support/paneCrawler.ts";

const crawler = {
  ...PANE_CRAWLER,
  pack: { series: 2, parallel: 1, openCircuitVoltage: 3.8, cellResistance: 0.026, wireResistance: 0.014 },
};
const ofMass = (mass: number) => ({ ...crawler, vehicle: { ...crawler.vehicle, mass } });
const GRAVITY = 9.80665;
const CEILING = 2;
/** Normal table: Φ⁻¹(0.95), and Φ at a few places (Abramowitz & Stegun, table 26.1). */
const Z95 = 1.644854;
const TABLE = [
  [-1, 0.158655],
  [-0.5, 0.308538],
  [0, 0.5],
  [1, 0.841345],
  [2, 0.97725],
] as const;

describe("doubtOf, of the mass alone", () => {
  const { suction } = predict(crawler);

  // On the ceiling the margin is F/(m·g): it falls with m, so its quantiles are those of m, turned round.
  it.each([0.002, 0.01, 0.05])("at %s of the mass: the quantiles are those of F/(m·g)", (relative) => {
    const mass = 0.4;
    const { attitudes } = uncertaintyOf(ofMass(mass), { uncertainty: { "vehicle.mass": relative * mass } });
    const { p5, p50, p95 } = attitudes[CEILING].driving;
    const margin = (z: number) => suction / (mass * (1 + z * relative) * GRAVITY);
    expect(p5).toBeCloseToRelative(margin(Z95), 0.02 * relative);
    expect(p50).toBeCloseToRelative(margin(0), 0.02 * relative);
    expect(p95).toBeCloseToRelative(margin(-Z95), 0.02 * relative);
  });

  it.each(TABLE)(
    "with the load that can be held %s standard uncertainties above it: chance of holding is %s, by the normal table",
    (z, share) => {
      const sd = 0.004;
      const { attitudes } = uncertaintyOf(ofMass(suction / GRAVITY - z * sd), {
        uncertainty: { "vehicle.mass": sd },
      });
      expect(attitudes[CEILING].parked.holds).toBeGreaterThan(share - 1 / 2048 - 1e-6);
      expect(attitudes[CEILING].parked.holds).toBeLessThan(share + 1 / 2048 + 1e-6);
    },
  );

  it("under a propeller: the quantiles are those of T/(m·g)", () => {
    const build = { ...ofMass(0.1), rotor: PANE_PROPELLER };
    const thrust = predictPropeller(build).suction;
    const { attitudes } = uncertaintyOf(build, { uncertainty: { "vehicle.mass": 0.001 } });
    expect(attitudes[CEILING].driving.p95).toBeCloseToRelative(
      thrust / (0.1 * (1 - 0.01 * Z95) * GRAVITY),
      2e-4,
    );
  });
});

describe("doubtOf, of five inputs at once", () => {
  const uncertainty = {
    "skirt.gap": 8e-5,
    "vehicle.wheelFriction": 0.06,
    "vehicle.mass": 0.03,
    "pack.openCircuitVoltage": 0.1,
    "rotor.psi.0": 0.04,
  };
  const build = ofMass(1);
  const doubt = uncertaintyOf(build, { uncertainty, samples: 8192 });
  const wall = doubt.attitudes[1].driving;
  /** Independent draws through the fast solver and the wall's own condition, F ≥ W/(μ − c_rr). */
  const brute = bruteForceMargins(build, uncertainty, 100_000);
  const below = (margin: number | null) =>
    brute.filter((each) => each < (margin ?? Number.NaN)).length / brute.length;

  // Four standard errors of a share among 100 000 draws; ours adds its own, below half of that by the even points.
  const within = (share: number) => 6 * Math.sqrt((share * (1 - share)) / 100_000);

  it("gives the quantiles of a brute-force run of 100 000, within their sampling error", () => {
    for (const [quantile, share] of [
      [wall.p5, 0.05],
      [wall.p50, 0.5],
      [wall.p95, 0.95],
    ] as const)
      expect(Math.abs(below(quantile) - share)).toBeLessThan(within(share));
  });

  it("gives its chance of holding, within its sampling error", () => {
    expect(wall.holds).toBeGreaterThan(0.05);
    expect(wall.holds).toBeLessThan(0.95);
    expect(Math.abs(wall.holds - (1 - below(1)))).toBeLessThan(within(wall.holds));
  });

  it("orders the shares, largest first, within a sum of 1", () => {
    const shares = doubt.shares.map(({ share }) => share);
    expect(shares).toEqual([...shares].sort((a, b) => b - a));
    expect(doubt.shares.map(({ path }) => path).sort()).toEqual(Object.keys(uncertainty).sort());
    const sum = shares.reduce((total, share) => total + share, 0);
    expect(sum).toBeLessThanOrEqual(1);
    expect(sum).toBeGreaterThan(0.97);
  });

  it("is the same with the same seed, another with another, and leaves the build as it was", () => {
    const before = structuredClone(build);
    const asked = { uncertainty, samples: 512, seed: 7 };
    expect(uncertaintyOf(build, asked)).toEqual(uncertaintyOf(build, asked));
    expect(uncertaintyOf(build, asked)).not.toEqual(uncertaintyOf(build, { ...asked, seed: 8 }));
    expect(build).toEqual(before);
    expectAllFinite(doubt);
  });
});

describe("doubtOf, as samples of a share", () => {
  const uncertainty = {
    "skirt.gap": 8e-5,
    "vehicle.wheelFriction": 0.06,
    "vehicle.mass": 0.03,
    "pack.openCircuitVoltage": 0.1,
    "rotor.psi.0": 0.04,
  };
  const build = ofMass(1);
  const brute = bruteForceMargins(build, uncertainty, 100_000);
  const truth = brute.filter((margin) => margin >= 1).length / brute.length;
  const WALL = 1;

  it("2048 even samples against 100 000 independent draws: chance of holding within the error that is stated, both counted", () => {
    const { attitudes, samplingError } = uncertaintyOf(build, { uncertainty });
    const together = Math.hypot(samplingError[WALL].driving, shareError(truth, brute.length));
    expect(Math.abs(attitudes[WALL].driving.holds - truth)).toBeLessThan(2 * together);
  });

  it("twenty seeds of 512: they scatter by less than the error that is stated, round the same value", () => {
    const runs = Array.from({ length: 20 }, (_, seed) =>
      uncertaintyOf(build, { uncertainty, seed, samples: 512, angles: [90] }),
    );
    const shares = runs.map(({ attitudes }) => attitudes[0].driving.holds);
    const mean = shares.reduce((sum, share) => sum + share, 0) / shares.length;
    const sd = Math.sqrt(shares.reduce((sum, share) => sum + (share - mean) ** 2, 0) / (shares.length - 1));
    expect(sd).toBeLessThan(0.7 * runs[0].samplingError[0].driving);
    expect(Math.abs(mean - truth)).toBeLessThan(3 * shareError(truth, brute.length));
  });

  it("about nine of ten brute-force margins lie between 5 and 95 %", () => {
    const { p5, p95 } = uncertaintyOf(build, { uncertainty }).attitudes[WALL].driving;
    const inside = brute.filter((margin) => margin > (p5 ?? 0) && margin < (p95 ?? 0)).length / brute.length;
    expect(Math.abs(inside - 0.9)).toBeLessThan(0.01);
  });

  it("the attitudes asked for are those answered for, in their order", () => {
    const angles = [153, 12, 90];
    const { attitudes, samplingError } = uncertaintyOf(build, { uncertainty, angles, samples: 256 });
    expect(attitudes.map(({ angle }) => angle)).toEqual(angles);
    expect(samplingError.map(({ angle }) => angle)).toEqual(angles);
  });

  it("the operating point's spread holds the point as stated, of a propeller there is none", () => {
    const { point, suction } = uncertaintyOf(build, { uncertainty });
    const nominal = predict(build);
    for (const [spread, value] of [
      [point?.flow, nominal.point?.flow],
      [point?.pressure, nominal.point?.pressure],
      [suction, nominal.suction],
    ] as const) {
      expect(spread?.p5).toBeLessThan(value ?? 0);
      expect(spread?.p95).toBeGreaterThan(value ?? 0);
      expect(spread?.p50).toBeCloseToRelative(value ?? Number.NaN, 0.02);
    }
    const { point: none } = uncertaintyOf(
      { ...build, rotor: PANE_PROPELLER },
      { uncertainty: { "vehicle.mass": 0.01 } },
    );
    expect(none).toBeNull();
  });
});

// Standard deviation of a beta distribution with k + 1 and n − k + 1 (any handbook of statistics), worked by hand: n = 8.
describe("shareError", () => {
  it.each([
    [0.5, 8, Math.sqrt((0.5 * 0.5) / 11)],
    [1, 8, Math.sqrt((0.9 * 0.1) / 11)],
    [0, 8, Math.sqrt((0.1 * 0.9) / 11)],
  ])("of a share of %s in %s: that of its beta distribution, never 0", (share, count, sd) => {
    expect(shareError(share, count)).toBeCloseToRelative(sd, 1e-12);
  });
});

describe("doubtOf, at its limits", () => {
  it.each([
    ["none", {}],
    ["zero", { "skirt.gap": 0, "vehicle.mass": 0 }],
  ])("with uncertainties of %s: every quantile is the prediction's own margin", (_, uncertainty) => {
    const prediction = predict(ofMass(0.9));
    const doubt = uncertaintyOf(ofMass(0.9), { uncertainty });
    prediction.attitudes.forEach(({ parked, driving }, i) => {
      for (const [spread, verdict] of [
        [doubt.attitudes[i].parked, parked],
        [doubt.attitudes[i].driving, driving],
      ] as const) {
        expect(spread.p5).toBe(spread.p95);
        expect(spread.p50).toBe(spread.p95);
        if (verdict.margin === null) expect(spread.p50).toBeNull();
        else expect(spread.p50).toBeCloseToRelative(verdict.margin, 1e-9);
        expect(spread.holds).toBe((verdict.margin ?? 1) >= 1 ? 1 : 0);
      }
    });
    expect(doubt.attitudes[3].angle).toBe(prediction.worst.driving.angle);
    for (const { share } of doubt.shares) expect(share).toBe(0);
  });

  it("of a floor: no suction is needed, null and held", () => {
    const [floor] = uncertaintyOf(crawler, { uncertainty: { "skirt.gap": 1e-4 } }).attitudes;
    expect(floor.parked).toEqual({ p5: null, p50: null, p95: null, holds: 1 });
  });

  it("of a motor that cannot turn: margins of 0, nothing held", () => {
    const motor = { ...crawler.motor, frictionTorque: 1 };
    const { attitudes } = uncertaintyOf({ ...crawler, motor }, { uncertainty: { "skirt.gap": 1e-4 } });
    expect(attitudes[CEILING].parked).toEqual({ p5: 0, p50: 0, p95: 0, holds: 0 });
  });

  it("of a gap set to 0 with an uncertainty: every sample's gap is 0 or more, the sealed margin is the most", () => {
    const sealed = { ...crawler, skirt: { ...crawler.skirt, gap: 0 } };
    const nominal = predict(sealed).attitudes[CEILING].driving.margin ?? 0;
    const { attitudes } = uncertaintyOf(sealed, { uncertainty: { "skirt.gap": 5e-5 }, samples: 256 });
    expect(attitudes[CEILING].driving.p95).toBeLessThan(nominal);
    expect(attitudes[CEILING].driving.p95).toBeGreaterThan(0.9 * nominal);
  });

  it("of shares and weather known very badly: stays within what is possible", () => {
    const uncertainty = {
      "air.humidity": 3,
      "air.temperature": 60,
      "supply.duty": 0.5,
      "vehicle.skirtShare": 2,
    };
    expectAllFinite(uncertaintyOf(crawler, { uncertainty, samples: 512 }));
  });

  it("of a curve so unsure that a sample's has no end: says that the uncertainty is too large", () => {
    try {
      uncertaintyOf(crawler, { uncertainty: { "rotor.psi.2": 60 } });
      expect.unreachable("it should refuse");
    } catch (error) {
      expect(error).toBeInstanceOf(NotEnoughDataError);
      expect(error).toMatchObject({ path: "uncertainty", need: "State smaller uncertainties." });
    }
  });

  it.each([
    ["uncertainty.skirt.gpa", { uncertainty: { "skirt.gpa": 1e-5 } }],
    ["uncertainty.vehicle.driven", { uncertainty: { "vehicle.driven": 1 } }],
    ["uncertainty.rotor.psi", { uncertainty: { "rotor.psi": 1 } }],
    ["uncertainty.rotor.psi.length", { uncertainty: { "rotor.psi.length": 1 } }],
    ["uncertainty.motor.thermalResistance", { uncertainty: { "motor.thermalResistance": 1 } }],
    ["uncertainty.skirt.gap", { uncertainty: { "skirt.gap": -1e-5 } }],
    ["uncertainty.skirt.gap", { uncertainty: { "skirt.gap": Number.NaN } }],
    ["samples", { uncertainty: {}, samples: 1 }],
    ["samples", { uncertainty: {}, samples: 99.5 }],
    ["seed", { uncertainty: {}, seed: -1 }],
  ])("with a wrong %s: throws and names it", (quantity, asked) => {
    expectOutOfRange(() => uncertaintyOf(crawler, asked), quantity);
  });
});

describe("cutNormal", () => {
  // Φ⁻¹(0.75) = 0.674490 (Abramowitz & Stegun, table 26.1): median of half a normal distribution.
  it("cut at its own mean: the median is that of the half-normal distribution", () => {
    expect(cutNormal(0, 2, [0, Number.POSITIVE_INFINITY])(0.5)).toBeCloseToRelative(2 * 0.67449, 1e-6);
  });

  it("far from its limits: the plain normal distribution", () => {
    expect(cutNormal(5, 0.1, [0, 10])(0.95)).toBeCloseToRelative(5 + 0.1 * Z95, 1e-7);
  });

  it("for any mean within any limits: rises with the share and stays within", () => {
    const share = fc.double({ min: 1e-9, max: 1 - 1e-9, noNaN: true });
    const mean = fc.double({ min: 0, max: 1, noNaN: true });
    const sd = fc.double({ min: 1e-6, max: 1e3, noNaN: true });
    fc.assert(
      fc.property(mean, sd, share, share, (m, u, a, b) => {
        const at = cutNormal(m, u, [0, 1]);
        const [low, high] = [at(Math.min(a, b)), at(Math.max(a, b))];
        expect(low).toBeGreaterThanOrEqual(0);
        expect(high).toBeLessThanOrEqual(1);
        expect(low).toBeLessThanOrEqual(high);
      }),
    );
  });

  it("knows which numbers may be negative, 0, or neither", () => {
    expect(limitsOf("rotor.psi.2")[0]).toBe(Number.NEGATIVE_INFINITY);
    expect(limitsOf("vehicle.cgFromRear")[0]).toBe(Number.NEGATIVE_INFINITY);
    expect(limitsOf("skirt.gap")[0]).toBe(0);
    for (const path of ["rotor.psi.0", "vehicle.mass", "skirt.openings.0.area"])
      expect(limitsOf(path)[0]).toBeGreaterThan(0);
    expect(limitsOf("air.humidity")).toEqual([0, 1]);
  });
});

describe("varianceShares", () => {
  const samples = scrambledSobol(4096, 3, 1).map(normalQuantile);
  const inputs = [0, 1, 2].map((j) => Array.from({ length: 4096 }, (_, i) => samples[3 * i + j]));
  const [x, y] = inputs;

  // var(x) = 1, var(y²) = 2 of standard normal x and y.
  it("of x + y²: one and two thirds, nothing for an input without effect", () => {
    const shares = varianceShares(
      inputs,
      x.map((value, i) => value + y[i] ** 2),
    );
    [1 / 3, 2 / 3, 0].forEach((share, j) => {
      expect(Math.abs(shares[j] - share)).toBeLessThan(0.01);
    });
  });

  it("of 3x + 4y: nine and sixteen parts of 25, in all no more than 1", () => {
    const shares = varianceShares(
      inputs,
      x.map((value, i) => 3 * value + 4 * y[i]),
    );
    expect(shares[0]).toBeCloseToRelative(9 / 25, 0.01);
    expect(shares[1]).toBeCloseToRelative(16 / 25, 0.01);
    expect(shares.reduce((sum, share) => sum + share, 0)).toBeLessThanOrEqual(1 + 1e-12);
  });

  it("of x·y: none by itself, all of it is interaction", () => {
    for (const share of varianceShares(
      inputs,
      x.map((value, i) => value * y[i]),
    ))
      expect(share).toBeLessThan(0.01);
  });

  it("of a constant, or of no samples: 0", () => {
    expect(
      varianceShares(
        inputs,
        x.map(() => 2),
      ),
    ).toEqual([0, 0, 0]);
    expect(varianceShares([[], []], [])).toEqual([0, 0]);
  });
});
