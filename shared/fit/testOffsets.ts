import { NoConvergenceError, NotEnoughDataError } from "../numeric/errors.ts";
import { fitLinear } from "../numeric/leastSquares.ts";
import type { Note } from "../physics/note.ts";
import { formatFixed } from "../units/format.ts";
import { offsetRound } from "./offsetRound.ts";
import { fitRotor, type RotorFitRequest } from "./rotorFit.ts";
import { type RotorPoint, rotorPoints } from "./rotorPoints.ts";

export interface TestOffset {
  readonly test: number;
  readonly points: number;
  /** what the tachometer reads too much, relative to the middle one of the tests [-] */
  readonly offset: number;
  /** of the offset [-] */
  readonly standardError: number;
  /** whether the offset is beyond three standard errors and half a percent */
  readonly stands: boolean;
}

export interface TestOffsets {
  /** by test number */
  readonly tests: readonly TestOffset[];
  /** of ψ with the offsets taken out [-] */
  readonly residualSd: number;
  readonly warnings: readonly Note[];
}

/** The offset settles in three or four rounds; a speed wrong by more than a third is no offset. */
const MAX_ROUNDS = 40;
const SETTLED = 1e-10;
/** An offset stands out beyond this many standard errors [-]… Common practice, no source. */
const CLEAR = 3;
/** …and beyond what a hand tachometer is good to [-]. Common practice, no source. */
const NOTICEABLE = 0.005;

/**
 * Which test of a family stands off the others, as if its tachometer read wrong.
 *
 *     n_read = n(1 + e):  φ = φ_read·(1 + e),  ψ = ψ_read·(1 + e)²;  one curve and an e for each test by least squares
 *
 * @param request - as {@link fitRotor}, each point with the number of its test
 * @returns e of each test against the middle one [-], its standard error, residual sd without them [-], what to know
 * @throws {NotEnoughDataError} on points of fewer than two tests, or too few points for a curve and the offsets
 * @throws {NoConvergenceError} where the offsets do not settle
 *
 * Valid for offsets up to about 20 %. Two tests show a difference, not which of them is wrong; an error of the pressure sensor looks alike where flows do not tell.
 * Source: fan laws; Gauss–Newton; docs/method/fits/rotor.md
 */
export function testOffsets(request: RotorFitRequest): TestOffsets {
  const read = rotorPoints(request.diameter, request.points);
  const tests = [...new Set(read.map((point) => point.test))].sort((a, b) => a - b);
  if (tests.length < 2)
    throw new NotEnoughDataError(
      "All points belong to one test.",
      "Repeat the curve test on another day or at another speed.",
      "points",
    );
  const { degree } = fitRotor(request);
  const settled = settle(read, tests, degree);
  const middle = middleOf(settled.offsets);
  const offsets = tests.map((test, k): TestOffset => {
    const offset = (1 + settled.offsets[k]) / (1 + middle.value) - 1;
    const standardError = contrastError(settled.covariance, k, middle.of);
    const stands = Math.abs(offset) > Math.max(CLEAR * standardError, NOTICEABLE);
    const points = read.filter((point) => point.test === test).length;
    return { test, points, offset, standardError, stands };
  });
  return { tests: offsets, residualSd: settled.residualSd, warnings: notesFor(offsets) };
}

interface Settled {
  readonly offsets: readonly number[];
  readonly covariance: readonly (readonly number[])[];
  readonly residualSd: number;
}

/** Gauss–Newton: corrects every test by its offset so far, then fits the curve and what is still left of the offsets. */
function settle(read: readonly RotorPoint[], tests: readonly number[], degree: number): Settled {
  const places = new Map(tests.map((test, k) => [test, k]));
  let psi: readonly number[] = [];
  let offsets = tests.map(() => 0);
  for (let round = 0; round < MAX_ROUNDS; round += 1) {
    const points = read.map((point) => corrected(point, offsets[places.get(point.test) ?? 0]));
    if (round === 0) psi = curveOf(points, degree);
    const fit = offsetRound(points, tests, psi);
    psi = fit.psi;
    offsets = offsets.map((offset, k) => (1 + offset) * (1 + fit.steps[k]) - 1);
    const largest = Math.max(...fit.steps.map(Math.abs));
    if (!(largest < 1)) break;
    if (largest < SETTLED) return { offsets, covariance: fit.covariance, residualSd: fit.residualSd };
  }
  throw new NoConvergenceError("the offsets between the tests did not settle", MAX_ROUNDS);
}

function corrected(point: RotorPoint, offset: number): RotorPoint {
  return { ...point, phi: point.phi * (1 + offset), psi: point.psi * (1 + offset) ** 2 };
}

function curveOf(points: readonly RotorPoint[], degree: number): number[] {
  return fitLinear({
    design: points.map(({ phi }) => Array.from({ length: degree + 1 }, (_, j) => phi ** j)),
    response: points.map((point) => point.psi),
    weights: points.map((point) => point.weight),
  }).coefficients;
}

/** Median of the offsets and the tests that it is made of, one or two. */
function middleOf(offsets: readonly number[]): { value: number; of: number[] } {
  const order = offsets.map((_, k) => k).sort((a, b) => offsets[a] - offsets[b]);
  const half = (offsets.length - 1) / 2;
  const of = [...new Set([order[Math.floor(half)], order[Math.ceil(half)]])];
  return { value: of.reduce((sum, k) => sum + offsets[k], 0) / of.length, of };
}

/** Of offset k less the mean of the middle ones. */
function contrastError(
  covariance: readonly (readonly number[])[],
  k: number,
  middle: readonly number[],
): number {
  const weights = covariance.map((_, j) => (j === k ? 1 : 0) - (middle.includes(j) ? 1 / middle.length : 0));
  const variance = covariance.reduce(
    (sum, row, i) => sum + row.reduce((part, c, j) => part + weights[i] * weights[j] * c, 0),
    0,
  );
  return Math.sqrt(Math.max(0, variance));
}

function notesFor(offsets: readonly TestOffset[]): Note[] {
  const off = offsets.filter((one) => one.stands);
  if (off.length === 0) return [];
  const percent = (one: TestOffset) =>
    `test ${one.test} by ${one.offset > 0 ? "+" : ""}${formatFixed(100 * one.offset, 1)} % of speed`;
  if (offsets.length === 2) {
    const difference = Math.abs(offsets[0].offset - offsets[1].offset);
    return [
      {
        code: "tests-differ",
        message: `The two tests differ as if a tachometer were wrong by ${formatFixed(100 * difference, 1)} % of speed; a third test shows which.`,
      },
    ];
  }
  return [
    {
      code: "test-off",
      message: `Off the others as if the tachometer were wrong: ${off.map(percent).join(", ")}.`,
    },
  ];
}
