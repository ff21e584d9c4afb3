import { describe, expect, it } from "vitest";
import {
  type Calibration,
  type CalibrationPull,
  type CalibrationRequest,
  calibrate,
} from "#shared/fit/calibration.ts";
import { gapHeightsFromLeak } from "#shared/fit/gapHeight.ts";
import { OutOfRangeError } from "#shared/numeric/errors.ts";
import { normalCdf } from "#shared/numeric/normal.ts";
import { airFrom } from "#shared/physics/air.ts";
import { predict } from "#shared/physics/predict.ts";
import { EDGE_LOSS } from "#shared/physics/restriction/lipGap.ts";
import {
  leakedOnce,
  normals,
  pulledOnce,
  RIG,
  RIG_MASS,
  rigAt,
  type Truth,
  trueForce,
} from "#tests/support/calibrationRig.ts";
import { expectAllFinite } from "#tests/support/finite.ts";

const PRIOR = { gap: { mean: 6e-4, sd: 2e-4 }, friction: { mean: 0.7, sd: 0.15 } };
const TRUTH: Truth = { gap: 4.5e-4, friction: 0.62, scatter: 0.05 };
const VOLTAGES = [4.15, 4.0, 3.85, 3.7];

const codes = (answer: Calibration) => answer.warnings.map(({ code }) => code);

/** Straight off, from the ceiling and along, at falling charge. */
function pullsOf(seed: number, truth = TRUTH, rounds = 1): CalibrationPull[] {
  const normal = normals(seed);
  const directions = ["straight-off", "ceiling", "along"] as const;
  return Array.from({ length: rounds }, () =>
    VOLTAGES.flatMap((voltage) =>
      directions.map((direction) => pulledOnce(direction, voltage, truth, normal)),
    ),
  ).flat();
}

describe("calibrate, on tests made at a known gap and friction", () => {
  it("in 100 seeded trials: gap and friction lie inside their 95 % intervals in at least 90, neither always too high", () => {
    let [gapInside, frictionInside, gapAbove] = [0, 0, 0];
    for (let seed = 1; seed <= 100; seed += 1) {
      const { gap, friction } = calibrate({ prior: PRIOR, pulls: pullsOf(seed) });
      const within = (value: number, [lo, hi]: readonly [number, number | null]) =>
        value >= lo && hi !== null && value <= hi;
      if (within(TRUTH.gap, gap.interval)) gapInside += 1;
      if (friction && within(TRUTH.friction, friction.interval)) frictionInside += 1;
      if (gap.mean > TRUTH.gap) gapAbove += 1;
    }
    console.info(
      `inside 95 %: gap ${gapInside}, friction ${frictionInside} of 100; gap above truth ${gapAbove}`,
    );
    expect(gapInside).toBeGreaterThanOrEqual(90);
    expect(frictionInside).toBeGreaterThanOrEqual(90);
    // A method without lean has 50 ± 5 above; the prior's mean lies above the truth and may pull a little.
    expect(gapAbove).toBeGreaterThan(30);
    expect(gapAbove).toBeLessThan(85);
  });

  it("with ten times the data: the standard uncertainties shrink by about √10", () => {
    const wide = { gap: { mean: 6e-4, sd: 6e-4 }, friction: { mean: 0.7, sd: 0.5 } };
    const once = calibrate({ prior: wide, pulls: pullsOf(7, TRUTH, 2) });
    const often = calibrate({ prior: wide, pulls: pullsOf(8, TRUTH, 20) });
    expect(once.gap.sd / often.gap.sd).toBeCloseToRelative(Math.sqrt(10), 0.2);
    expect((once.friction?.sd ?? 0) / (often.friction?.sd ?? 1)).toBeCloseToRelative(Math.sqrt(10), 0.2);
    expect(often.gap.mean).toBeCloseToRelative(TRUTH.gap, 0.1);
    expect(often.scatter ?? 0).toBeCloseToRelative(TRUTH.scatter, 0.15);
  });

  it("with pulls straight off alone: friction is null and keeps its prior, which is said", () => {
    const pulls = pullsOf(3).filter(({ direction }) => direction !== "along");
    const answer = calibrate({ prior: PRIOR, pulls });
    expect(answer.friction).toBeNull();
    expect(answer.covariance).toHaveLength(1);
    expect(answer.covariance[0][0]).toBeCloseToRelative(answer.gap.sd ** 2, 1e-12);
    expect(codes(answer)).toEqual(["friction-not-told"]);
  });

  it("with pulls along alone: gap and friction are tied, a tighter friction tightens the gap", () => {
    const pulls = pullsOf(4, TRUTH, 4).filter(({ direction }) => direction === "along");
    const loose = calibrate({ prior: PRIOR, pulls });
    const tight = calibrate({ prior: { ...PRIOR, friction: { mean: TRUTH.friction, sd: 0.005 } }, pulls });
    const [[gg, gf], [, ff]] = loose.covariance;
    // A wider gap pulls less and asks for more friction.
    expect(gf / Math.sqrt(gg * ff)).toBeGreaterThan(0.5);
    expect(tight.gap.sd).toBeLessThan(0.6 * loose.gap.sd);
  });
});

describe("calibrate, against a plain three-dimensional sum over gap, friction and scatter", () => {
  // The posterior of docs/method/calibration.md written out anew, summed over a fixed lattice with predict() at each gap.
  const pulls: CalibrationPull[] = [
    { input: rigAt(4.1), direction: "straight-off", held: 7.2, letGo: 7.9 },
    { input: rigAt(3.8), direction: "ceiling", held: 6.9, letGo: 7.3 },
    { input: rigAt(4.1), direction: "along", rigMass: RIG_MASS, held: 6.4, letGo: null },
    { input: rigAt(4.1), direction: "along", rigMass: RIG_MASS, held: 6.2, letGo: 7.1 },
    { input: rigAt(3.8), direction: "along", rigMass: RIG_MASS, held: 0, letGo: 6.9 },
  ];

  function lattice() {
    const sums = { total: 0, gap: 0, gap2: 0, mu: 0, mu2: 0, both: 0 };
    const inGap: [number, number][] = [];
    const inMu = new Map<number, number>();
    for (let gap = 5e-6; gap < 1.4e-3; gap += 1e-5) {
      const [full, low] = [4.1, 3.8].map((voltage) => predict(rigAt(voltage, gap)).suction);
      let here = 0;
      for (let k = 0; k < 80; k += 1) {
        const mu = 0.2 + (k + 0.5) * 0.015;
        const rig = RIG_MASS * 9.80665;
        const forces = [full, low, mu * (full + rig), mu * (full + rig), mu * (low + rig)];
        let density = 0;
        for (let log = -2.6; log <= 2.6; log += 0.13) {
          const s = 0.05 * Math.exp(log);
          const chance = pulls.reduce((product, { held, letGo }, i) => {
            const above = letGo === null ? 1 : normalCdf((letGo / forces[i] - 1) / s);
            return product * (above - (held === 0 ? 0 : normalCdf((held / forces[i] - 1) / s)));
          }, 1);
          density += chance * Math.exp(-0.5 * (log / Math.LN2) ** 2);
        }
        const weight =
          density * Math.exp(-0.5 * ((gap - 6e-4) / 2e-4) ** 2) * Math.exp(-0.5 * ((mu - 0.7) / 0.15) ** 2);
        sums.total += weight;
        sums.gap += weight * gap;
        sums.gap2 += weight * gap * gap;
        sums.mu += weight * mu;
        sums.mu2 += weight * mu * mu;
        sums.both += weight * gap * mu;
        inMu.set(mu, (inMu.get(mu) ?? 0) + weight);
        here += weight;
      }
      inGap.push([gap + 5e-6, here]);
    }
    return { sums, inGap, inMu: [...inMu].map(([mu, weight]): [number, number] => [mu + 0.0075, weight]) };
  }

  /** Upper ends of cells and their weights → the place below which a share lies, linear within a cell. */
  function quantile(cells: readonly [number, number][], share: number): number {
    const total = cells.reduce((sum, [, weight]) => sum + weight, 0);
    let below = 0;
    for (const [i, [end, weight]] of cells.entries()) {
      const width = end - (cells[i - 1]?.[0] ?? 0);
      if (below + weight >= share * total) return end - width * (1 - (share * total - below) / weight);
      below += weight;
    }
    return Number.NaN;
  }

  it("of held, let-go and two-sided pulls: means, uncertainties, correlation and intervals agree", () => {
    const { sums, inGap, inMu } = lattice();
    const [gap, mu] = [sums.gap / sums.total, sums.mu / sums.total];
    const answer = calibrate({ prior: PRIOR, pulls });
    const friction = answer.friction ?? answer.gap;
    expect(answer.gap.mean).toBeCloseToRelative(gap, 2e-3);
    expect(answer.gap.sd).toBeCloseToRelative(Math.sqrt(sums.gap2 / sums.total - gap ** 2), 5e-3);
    expect(friction.mean).toBeCloseToRelative(mu, 2e-3);
    expect(friction.sd).toBeCloseToRelative(Math.sqrt(sums.mu2 / sums.total - mu ** 2), 1e-2);
    expect(answer.covariance[0][1]).toBeCloseToRelative(sums.both / sums.total - gap * mu, 2e-2);
    for (const [i, share] of [0.025, 0.975].entries()) {
      expect(answer.gap.interval[i] ?? 0).toBeCloseToRelative(quantile(inGap, share), 1e-2);
      expect(friction.interval[i] ?? 0).toBeCloseToRelative(quantile(inMu, share), 1e-2);
    }
  });
});

describe("calibrate, where little or nothing is told", () => {
  it("without data: the priors come back, and what to measure is said", () => {
    const answer = calibrate({ prior: PRIOR, pulls: [] });
    expect(answer.gap.best).toBeCloseToRelative(6e-4, 1e-5);
    // Normal cut at 0, three sds below the mean: mean + sd·φ(3)/Φ(3), φ(3) = 0.004432, Φ(3) = 0.998650 (Abramowitz & Stegun, table 26.1).
    expect(answer.gap.mean).toBeCloseToRelative(6e-4 + (2e-4 * 0.004432) / 0.99865, 1e-5);
    expect(answer.gap.sd).toBeCloseToRelative(2e-4, 0.01);
    expect(answer.friction).toBeNull();
    expect(answer.scatter).toBeNull();
    expect(codes(answer)).toEqual(["no-data", "friction-not-told"]);
    expect(answer.warnings[0].message).toMatch(/Pull until it lets go/);
    expectAllFinite(answer);
  });

  it("with a prior that reaches well below 0: the mean is that of the cut normal", () => {
    const prior = { ...PRIOR, gap: { mean: 1e-4, sd: 1e-4 } };
    const { gap } = calibrate({ prior, pulls: [] });
    // φ(1) = 0.241971, Φ(1) = 0.841345 (Abramowitz & Stegun, table 26.1).
    expect(gap.mean).toBeCloseToRelative(1e-4 * (1 + 0.241971 / 0.841345), 1e-5);
    expect(gap.interval[0]).toBeGreaterThan(0);
  });

  it("with pulls that all held: one-sided, narrower gaps stay possible, larger loads are asked for", () => {
    const held = { input: rigAt(4.1), direction: "straight-off", held: 7.8, letGo: null } as const;
    const answer = calibrate({ prior: PRIOR, pulls: [held, held, held] });
    expect(answer.gap.interval[0]).toBe(0);
    // Without the pulls the prior leaves 5 % above 0.93 mm; 7.8 N is what the rig gives at 0.45 mm.
    expect(answer.gap.interval[1]).toBeLessThan(7e-4);
    expect(answer.gap.mean).toBeLessThan(PRIOR.gap.mean);
    expect(codes(answer)).toContain("all-held");
    expect(answer.warnings.find(({ code }) => code === "all-held")?.message).toMatch(
      /larger loads until it lets go/,
    );
    expectAllFinite(answer);
  });

  it("with pulls that all let go at once: one-sided the other way", () => {
    const fell = { input: rigAt(4.1), direction: "ceiling", held: 0, letGo: 6 } as const;
    const answer = calibrate({ prior: PRIOR, pulls: [fell, fell] });
    expect(answer.gap.interval[1]).toBeNull();
    expect(answer.gap.mean).toBeGreaterThan(PRIOR.gap.mean);
    expect(codes(answer)).toContain("all-let-go");
  });

  it("with pulls along that all held: friction is bounded from below alone", () => {
    const held = { input: rigAt(4.1), direction: "along", rigMass: RIG_MASS, held: 8, letGo: null } as const;
    const { friction } = calibrate({ prior: PRIOR, pulls: [held, held] });
    expect(friction?.interval[0]).toBeGreaterThan(0.5);
    expect(friction?.interval[1]).toBeNull();
  });

  it("with a pull without any load: it is left out and counted, residuals keep the places", () => {
    const nothing = { input: rigAt(4.1), direction: "ceiling", held: 0, letGo: null } as const;
    const answer = calibrate({ prior: PRIOR, pulls: [nothing, ...pullsOf(5)] });
    expect(codes(answer)).toEqual(["empty-pulls"]);
    expect(answer.residuals.map(({ pull }) => pull)).toEqual(Array.from({ length: 12 }, (_, i) => i + 1));
  });

  it("with loads within brackets so wide that they say little: it says so", () => {
    const wide = { input: rigAt(4.1), direction: "ceiling", held: 2, letGo: 20 } as const;
    expect(codes(calibrate({ prior: PRIOR, pulls: [wide] }))).toContain("hardly-narrowed");
  });
});

describe("calibrate, with leak readings", () => {
  const exact = { ...TRUTH, scatter: 0 };
  const leaks = [50, 100, 200, 400].map((pressure) => leakedOnce(pressure, exact, () => 0));

  it("of flows without scatter: finds the height that each reading by itself gives, roughness taken off", () => {
    const { gap, warnings } = calibrate({
      prior: { ...PRIOR, gap: { mean: 6e-4, sd: 1e-3 } },
      pulls: [],
      leaks,
    });
    const { perimeter, land, roughness } = RIG.skirt;
    const lip = { perimeter, land, lossSum: EDGE_LOSS.square };
    const read = { points: leaks, air: airFrom(RIG.air) };
    const heights = gapHeightsFromLeak({ ...lip, openings: [] }, read);
    const height = heights.reduce((sum, each) => sum + each, 0) / heights.length;
    expect(gap.best).toBeCloseToRelative(height - roughness, 5e-4);
    expect(gap.best).toBeCloseToRelative(TRUTH.gap, 5e-4);
    expect(warnings.map(({ code }) => code)).toEqual(["friction-not-told"]);
  });

  it("beside pulls made at the same gap: narrows the gap, contradicts nothing", () => {
    const normal = normals(11);
    const scattered = [50, 100, 200, 400].map((pressure) => leakedOnce(pressure, TRUTH, normal));
    const alone = calibrate({ prior: PRIOR, pulls: pullsOf(9) });
    const both = calibrate({ prior: PRIOR, pulls: pullsOf(9), leaks: scattered });
    expect(both.gap.sd).toBeLessThan(alone.gap.sd);
    expect(codes(both)).toEqual([]);
    expect(both.leakResiduals).toHaveLength(4);
  });

  it("of flows at one pressure through a meter known to 3 %: the gap is no better known than the meter, however many", () => {
    const many = Array.from({ length: 50 }, () => leaks[2]);
    const wide = { ...PRIOR, gap: { mean: 6e-4, sd: 1e-3 } };
    const few = calibrate({ prior: wide, pulls: [], leaks: many, meterUncertainty: 0.03 });
    const ideal = calibrate({ prior: wide, pulls: [], leaks: many, meterUncertainty: 0 });
    // Q grows at least in proportion to the height and at most with its cube: 3 % of flow is 1 to 3 % of height.
    const height = TRUTH.gap + RIG.skirt.roughness;
    expect(few.gap.sd / height).toBeGreaterThan(0.009);
    expect(few.gap.sd / height).toBeLessThan(0.031);
    expect(ideal.gap.sd).toBeLessThan(few.gap.sd / 5);
  });

  it("beside pulls made at a much wider gap: says that the tests contradict each other", () => {
    const answer = calibrate({ prior: PRIOR, pulls: pullsOf(9, { ...TRUTH, gap: 1.3e-3 }), leaks });
    expect(codes(answer)).toContain("conflict");
  });
});

describe("calibrate, on tests that contradict", () => {
  it("one pull off by a third: it is named, the others are not", () => {
    const pulls = pullsOf(2);
    const odd = { ...pulls[4], held: pulls[4].held * 1.4, letGo: (pulls[4].letGo ?? 0) * 1.4 };
    const answer = calibrate({ prior: PRIOR, pulls: pulls.with(4, odd) });
    const note = answer.warnings.find(({ code }) => code === "conflict");
    expect(note?.message).toMatch(/pull 5 \(\+/);
    expect(note?.message.match(/pull \d/g)).toHaveLength(1);
  });

  it("all pulls against a narrow prior: the prior is doubted, and stays part of the answer", () => {
    const prior = { ...PRIOR, gap: { mean: 1e-3, sd: 5e-5 } };
    const answer = calibrate({ prior, pulls: pullsOf(6, TRUTH, 4) });
    expect(codes(answer)).toContain("prior-doubted");
    expect(answer.gap.mean).toBeLessThan(1e-3 - 3 * 5e-5);
  });

  it("pulls made by the model itself: no uncertainty is raised in 20 seeded trials but for the one in a hundred", () => {
    const raised = Array.from({ length: 20 }, (_, i) =>
      codes(calibrate({ prior: PRIOR, pulls: pullsOf(i + 200) })),
    );
    expect(raised.filter((each) => each.length > 0).length).toBeLessThanOrEqual(2);
  });
});

describe("calibrate, measured against predicted", () => {
  it("at the most likely gap and friction: the forces are those of predict()", () => {
    const answer = calibrate({ prior: PRIOR, pulls: pullsOf(1) });
    const truth = { gap: answer.gap.best, friction: answer.friction?.best ?? 0, scatter: 0 };
    answer.residuals.forEach((residual, i) => {
      const { direction, input } = pullsOf(1)[i];
      const force = trueForce(direction, input.pack.openCircuitVoltage, truth);
      expect(residual.predicted).toBeCloseToRelative(force, 1e-5);
      expect(residual.inside).toBe(force >= residual.held && force <= (residual.letGo ?? Infinity));
    });
    expectAllFinite(answer);
  });
});

describe("calibrate, on numbers that can't be", () => {
  const pull = pullsOf(1)[0];
  it.each<[string, Partial<CalibrationRequest>]>([
    ["pulls.0.held", { pulls: [{ ...pull, held: 8, letGo: 7 }] }],
    ["pulls.0.held", { pulls: [{ ...pull, held: Number.NaN }] }],
    ["pulls.0.held", { pulls: [{ ...pull, input: rigAt(0.01) }] }],
    ["pulls.0.letGo", { pulls: [{ ...pull, held: 0, letGo: 0 }] }],
    ["pulls.0.rigMass", { pulls: [{ ...pull, rigMass: -1 }] }],
    ["prior.gap.sd", { prior: { ...PRIOR, gap: { mean: 6e-4, sd: 0 } } }],
    ["prior.friction.mean", { prior: { ...PRIOR, friction: { mean: -1, sd: 0.1 } } }],
    ["scatter", { scatter: 0 }],
    ["scatter", { scatter: Number.NaN }],
    ["leakScatter", { leakScatter: 2 }],
    ["meterUncertainty", { meterUncertainty: -0.01 }],
    ["leaks.0.pressure", { leaks: [{ input: RIG, pressure: 0, flow: 1e-3 }] }],
    ["leaks.0.flow", { leaks: [{ input: RIG, pressure: 10, flow: 0 }] }],
  ])("%s: is refused by its name", (quantity, change) => {
    const run = () => calibrate({ prior: PRIOR, pulls: [pull], ...change });
    expect(run).toThrow(OutOfRangeError);
    expect(run).toThrow(expect.objectContaining({ quantity }));
  });

  it.each([
    ["far beyond anything the rig gives", { held: 500, letGo: 501 }],
    ["far below", { held: 0.001, letGo: 0.0011 }],
    ["read exactly, twice the same", { held: 7, letGo: 7 }],
    ["a hair apart", { held: 7, letGo: 7 + 1e-15 }],
  ])("loads %s: never NaN", (_, loads) => {
    expectAllFinite(
      calibrate({
        prior: PRIOR,
        pulls: [
          { ...pull, ...loads },
          { ...pull, ...loads },
        ],
      }),
    );
  });

  it.each([
    ["sealed", { gap: { mean: 0, sd: 1e-5 }, friction: PRIOR.friction }],
    ["known to a micrometre", { gap: { mean: 6e-4, sd: 1e-6 }, friction: { mean: 0.7, sd: 1e-4 } }],
    ["known to nothing", { gap: { mean: 6e-4, sd: 0.05 }, friction: { mean: 0.7, sd: 50 } }],
  ])("a prior %s: never NaN", (_, prior) => {
    expectAllFinite(calibrate({ prior, pulls: pullsOf(1) }));
  });
});
