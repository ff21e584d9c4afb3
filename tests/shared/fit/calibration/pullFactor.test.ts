import { describe, expect, it } from "vitest";
import { jointInput } from "#shared/decide/joint.ts";
import { type Calibration, type CalibrationPull, calibrate } from "#shared/fit/calibration.ts";
import { normalCdf } from "#shared/numeric/normal.ts";
import { scrambledSobol } from "#shared/numeric/sobol.ts";
import { type PredictInput, predict } from "#shared/physics/predict.ts";
import { rigAt } from "#tests/support/calibrationRig.ts";
import { expectAllFinite } from "#tests/support/finite.ts";

const GAP = { mean: 6e-4, sd: 2e-4 };
const FACTOR = { median: 1, sd: 0.1 };
const PRIOR = { gap: GAP, friction: { mean: 0.7, sd: 0.15 }, pullFactor: FACTOR };
const LEAK = { coefficient: 6.5e-5, exponent: 0.55, density: 1.2, viscosity: 1.82e-5 };

const measured = (input: PredictInput): PredictInput => ({
  ...input,
  skirt: { ...input.skirt, measuredLeak: LEAK },
});
const straight = (input: PredictInput, held: number, letGo: number | null): CalibrationPull => ({
  input,
  direction: "straight-off",
  held,
  letGo,
});

/** Weights of a lattice: gap [m], ln κ, and the pulls' likelihood summed over the scatter, by docs/method/calibration.md, Equation, written out anew. */
interface Cell {
  readonly gap: number;
  readonly log: number;
  readonly weight: number;
}

function likelihood(pulls: readonly CalibrationPull[], forces: readonly number[]): number {
  let sum = 0;
  for (let log = -3; log <= 3; log += 0.2) {
    const s = Math.hypot(0.05 * Math.exp(log), 1e-3);
    const chance = pulls.reduce((product, { held, letGo }, i) => {
      const above = letGo === null ? 1 : normalCdf((letGo / forces[i] - 1) / s);
      return product * (above - (held === 0 ? 0 : normalCdf((held / forces[i] - 1) / s)));
    }, 1);
    sum += chance * Math.exp(-0.5 * (log / Math.LN2) ** 2);
  }
  return sum;
}

function lattice(pulls: readonly CalibrationPull[], gaps: readonly number[]): Cell[] {
  return gaps.flatMap((gap) => {
    const suctions = pulls.map(
      ({ input }) => predict({ ...input, skirt: { ...input.skirt, gap } }, []).suction,
    );
    return Array.from({ length: 81 }, (_, k) => {
      const log = (k - 40) / 90;
      const forces = suctions.map((suction) => suction * Math.exp(log));
      const prior = Math.exp(-0.5 * ((gap - GAP.mean) / GAP.sd) ** 2 - 0.5 * (log / FACTOR.sd) ** 2);
      return { gap, log, weight: prior * likelihood(pulls, forces) };
    });
  });
}

function momentsOf(cells: readonly Cell[]) {
  const total = cells.reduce((sum, { weight }) => sum + weight, 0);
  const mean = (of: (cell: Cell) => number) =>
    cells.reduce((sum, cell) => sum + cell.weight * of(cell), 0) / total;
  const gap = mean((cell) => cell.gap);
  const log = mean((cell) => cell.log);
  return {
    gap,
    log,
    factor: mean((cell) => Math.exp(cell.log)),
    gapSd: Math.sqrt(mean((cell) => (cell.gap - gap) ** 2)),
    logSd: Math.sqrt(mean((cell) => (cell.log - log) ** 2)),
    both: mean((cell) => (cell.gap - gap) * (cell.log - log)),
  };
}

/** The same moments of what the samples of an uncertainty draw. */
function drawn({ joint }: Calibration, withGap: boolean): Cell[] {
  const copy = { gap: 6e-4, factor: 1 };
  const paths = { gap: withGap ? "gap" : null, pullFactor: "factor", friction: null };
  const input = jointInput(copy, { table: joint, paths }, "joint");
  const count = 4096;
  const uniform = scrambledSobol(count, input.dimensions, 3);
  const kept = new Float64Array(3);
  return Array.from({ length: count }, (_, i) => {
    input.write(uniform, i * input.dimensions, kept);
    return { gap: copy.gap, log: Math.log(copy.factor), weight: 1 };
  });
}

describe("calibrate, with a pull factor, against a plain sum over gap, factor and scatter", () => {
  const pulls = [
    straight(rigAt(4.1), 6.3, 6.7),
    straight(rigAt(4.1), 6.6, 7.0),
    straight(rigAt(3.8), 5.6, 6.0),
    straight(rigAt(3.8), 5.9, null),
  ];
  const answer = calibrate({ prior: PRIOR, pulls });

  it("where the gap is only set: gap and factor share what the pulls say, means, uncertainties and covariance agree", () => {
    const gaps = Array.from({ length: 48 }, (_, i) => 1e-5 + i * 2.5e-5);
    const plain = momentsOf(lattice(pulls, gaps));
    const samples = momentsOf(drawn(answer, true));
    expect(answer.gap.mean).toBeCloseToRelative(plain.gap, 2e-3);
    expect(answer.gap.sd).toBeCloseToRelative(plain.gapSd, 1e-2);
    expect(answer.pullFactor?.mean).toBeCloseToRelative(plain.factor, 1e-3);
    expect(samples.gap).toBeCloseToRelative(plain.gap, 3e-3);
    expect(samples.gapSd).toBeCloseToRelative(plain.gapSd, 2e-2);
    expect(samples.logSd).toBeCloseToRelative(plain.logSd, 2e-2);
    expect(samples.both).toBeCloseToRelative(plain.both, 3e-2);
    // A wider gap pulls less, and asks for a larger factor.
    expect(plain.both / plain.gapSd / plain.logSd).toBeGreaterThan(0.8);
    expectAllFinite(answer);
  });

  it("where the leak was measured: the gap keeps its prior, the pulls tell the factor", () => {
    const tested = pulls.map((pull) => ({ ...pull, input: measured(pull.input) }));
    const told = calibrate({ prior: PRIOR, pulls: tested });
    const plain = momentsOf(lattice(tested, [6e-4]));
    expect(told.pullFactor?.mean).toBeCloseToRelative(plain.factor, 5e-4);
    expect(momentsOf(drawn(told, false)).logSd).toBeCloseToRelative(plain.logSd, 1e-2);
    // Cut at 0, three standard deviations below its mean: 0.4 % off the plain normal's.
    expect(told.gap.sd).toBeCloseToRelative(GAP.sd, 0.02);
    expect(told.warnings.map(({ code }) => code)).toEqual(["friction-not-told"]);
  });

  it("dragged along as well: friction and factor are measured separately by straight pulls, and drawn with their covariance", () => {
    const along = [6.0, 6.2].map((held) => ({
      ...straight(measured(rigAt(4.1)), held, held + 0.3),
      direction: "along" as const,
      rigMass: 0.3,
    }));
    const told = calibrate({
      prior: PRIOR,
      pulls: [...pulls, ...along].map((p) => ({ ...p, input: measured(p.input) })),
    });
    const [force] = [predict(measured(rigAt(4.1)), []).suction];
    const factor = told.pullFactor?.mean ?? 0;
    const friction = told.friction?.mean ?? 0;
    expect(friction * (factor * force + 0.3 * 9.80665)).toBeCloseToRelative(6.25, 0.02);
    expect(told.joint.covariance.every((both) => both < 0)).toBe(true);
  });
});

describe("calibrate, with a pull factor at its limits", () => {
  const pulls = [straight(rigAt(4.1), 6.3, 6.7), straight(rigAt(3.8), 5.6, 6.0)];

  it("known to nothing less than 1: the answer without one", () => {
    const sure = calibrate({ prior: { ...PRIOR, pullFactor: { median: 1, sd: 1e-6 } }, pulls });
    const without = calibrate({ prior: { ...PRIOR, pullFactor: null }, pulls });
    expect(sure.gap.mean).toBeCloseToRelative(without.gap.mean, 1e-4);
    expect(sure.gap.sd).toBeCloseToRelative(without.gap.sd, 1e-3);
    expect(without.pullFactor).toBeNull();
  });

  it("with a gap measured to a hundredth of a millimetre: the factor takes what the pulls say, the gap stays", () => {
    const gap = { mean: 5e-4, sd: 1e-5 };
    const { pullFactor, gap: found } = calibrate({ prior: { ...PRIOR, gap }, pulls });
    const [force] = [predict(rigAt(4.1, 5e-4), []).suction];
    expect(found.mean).toBeCloseToRelative(gap.mean, 0.01);
    expect(pullFactor?.mean).toBeCloseToRelative(6.5 / force, 0.03);
  });

  it("with a jet: the factor is the cavity's alone", () => {
    const jet = (input: PredictInput) => ({
      ...input,
      vehicle: { ...input.vehicle, jetArea: 2e-4, jetAngle: 0 },
    });
    const input = measured(jet(rigAt(4.1)));
    const at = (pullFactor: number) =>
      predict({ ...input, vehicle: { ...input.vehicle, pullFactor } }, []).suction;
    const load = at(0.85);
    const exact = Array.from({ length: 40 }, () => straight(input, load * 0.999, load * 1.001));
    expect(calibrate({ prior: PRIOR, pulls: exact }).pullFactor?.best).toBeCloseToRelative(0.85, 2e-3);
  });

  it("without pulls: none is told", () => {
    expect(calibrate({ prior: PRIOR, pulls: [] }).pullFactor).toBeNull();
  });
});
