import { NotEnoughDataError, requireFinite, requireNonNegative, requirePositive } from "../numeric/errors.ts";
import { fitLinear } from "../numeric/leastSquares.ts";
import { studentQuantile } from "../numeric/student.ts";
import { airFrom, DEFAULT_WEATHER } from "../physics/air.ts";
import { STANDARD_AIR_DENSITY } from "../physics/constants.ts";
import type { RotorState } from "../physics/fanlaws/coefficients.ts";
import { propellerReynolds, propellerUnits } from "../physics/fanlaws/propeller.ts";
import { RPM } from "../physics/motor.ts";
import type { Note } from "../physics/note.ts";

/** One row of a thrust test. */
export interface ThrustRow {
  readonly rpm: number;
  /** [N] */
  readonly thrust: number;
  /** [W] */
  readonly shaftPower?: number;
  /** 1.2, the standard air of ISO 5801, unless given [kg/m³] */
  readonly density?: number;
  /** the request's unless given; the chord goes with it [m] */
  readonly diameter?: number;
}

export interface PropellerFitRequest {
  /** [m] */
  readonly diameter: number;
  /** at 75 % radius; a tenth of the diameter unless given. It cancels while the same is used throughout [m] */
  readonly chord?: number;
  readonly rows: readonly ThrustRow[];
}

/** C = C₀ + slope·ln(Re/Re_ref) */
export type ReynoldsLine = readonly [number, number];
/** Of C₀ and slope; the slope's part is 0 where no drift was kept. */
export type LineCovariance = readonly (readonly number[])[];

export interface PropellerFit {
  /** C_T at the reference, and per ln Re; the second is 0 where no drift is shown [-] */
  readonly thrust: ReynoldsLine;
  /** C_P likewise; null without shaft power [-] */
  readonly power: ReynoldsLine | null;
  readonly referenceReynolds: number;
  /** least and greatest of the rows [-] */
  readonly testedReynolds: readonly [number, number];
  /** the chord that Re was taken with [m] */
  readonly chord: number;
  /** of T and P, every row counting alike; 0 where no residual is left over [N, W] */
  readonly residualSd: { readonly thrust: number; readonly power: number | null };
  /** of the coefficients at the reference; null where no residual is left over [-] */
  readonly standardErrors: { readonly thrust: number | null; readonly power: number | null };
  /** of each coefficient and its drift, 2 by 2; null where no residual is left over [-] */
  readonly covariance: { readonly thrust: LineCovariance | null; readonly power: LineCovariance | null };
  /** readings less coefficients */
  readonly dof: { readonly thrust: number; readonly power: number | null };
  readonly warnings: readonly Note[];
}

/** Chord over diameter of small propellers, where none is given [-]. Common practice, no source. */
export const USUAL_CHORD = 0.1;
/** A drift with speed is fitted from this many different speeds on [-]. Source: docs/method/fits/propeller.md. */
const SPEEDS_FOR_DRIFT = 3;
/** Speeds closer than this share count as one [-]. Judgement. */
const SAME_SPEED = 0.02;
const CONFIDENCE = 0.95;

/**
 * Thrust and power coefficients of an open propeller from a thrust test.
 *
 *     T = ρn²D⁴·[C_T + c_T ln(Re/Re_ref)],  P = ρn³D⁵·[C_P + c_P ln(Re/Re_ref)] by least squares in T and P; the drifts c kept with three speeds or more where |c| is significant at 5 %
 *
 * @param request - diameter [m], chord [m]; rows: speed [rpm], thrust [N], shaft power [W], density [kg/m³], diameter where it differs [m]
 * @returns C_T and C_P with their drifts [-], reference Reynolds number [-], residual sd [N, W], notes
 * @throws {OutOfRangeError} on a row that can't be, by its path
 * @throws {NotEnoughDataError} without rows, or where the rows show no thrust
 *
 * Valid standing still, between the slowest and the fastest row. Weighing in T and P takes the scale's error as the same at every speed. Re is at the viscosity of 20 °C.
 * Source: docs/method/fits/propeller.md
 */
export function fitPropeller(request: PropellerFitRequest): PropellerFit {
  const diameter = requirePositive("diameter", request.diameter);
  const chord = requirePositive("chord", request.chord ?? USUAL_CHORD * diameter);
  const rows = request.rows.map((row, i) => scaledRow(row, diameter, chord / diameter, `rows.${i}`));
  if (rows.length === 0)
    throw new NotEnoughDataError(
      "No row is given.",
      "Measure thrust and shaft power at three speeds or more.",
      "rows",
    );
  const logs = rows.map((row) => row.logReynolds);
  const reference = logs.reduce((sum, log) => sum + log, 0) / logs.length;
  const speeds = differentSpeeds(rows.map((row) => row.speed));
  const line = (
    kept: readonly ScaledRow[],
    unit: "thrustUnit" | "powerUnit",
    of: (row: ScaledRow) => number,
  ) =>
    fitLine(
      kept.map((row) => ({ unit: row[unit], log: row.logReynolds - reference, value: of(row) })),
      differentSpeeds(kept.map((row) => row.speed)),
    );
  const thrust = line(rows, "thrustUnit", (row) => row.thrust);
  if (!(thrust.line[0] > 0))
    throw new NotEnoughDataError(
      "The rows show no thrust.",
      "Check the sign of the scale, and that it was zeroed with the motor at rest.",
      "rows",
    );
  const powered = rows.filter((row) => row.shaftPower !== null);
  const power = powered.length > 0 ? line(powered, "powerUnit", (row) => row.shaftPower ?? Number.NaN) : null;
  return {
    thrust: thrust.line,
    power: power?.line ?? null,
    referenceReynolds: Math.exp(reference),
    testedReynolds: [Math.exp(Math.min(...logs)), Math.exp(Math.max(...logs))],
    chord,
    residualSd: { thrust: thrust.residualSd, power: power?.residualSd ?? null },
    standardErrors: { thrust: thrust.standardError, power: power?.standardError ?? null },
    covariance: { thrust: thrust.covariance, power: power?.covariance ?? null },
    dof: { thrust: thrust.dof, power: power?.dof ?? null },
    warnings: notesFor(speeds, rows.length, powered.length, request.chord === undefined),
  };
}

interface ScaledRow {
  readonly speed: number;
  readonly logReynolds: number;
  readonly thrust: number;
  readonly shaftPower: number | null;
  readonly thrustUnit: number;
  readonly powerUnit: number;
}

function scaledRow(row: ThrustRow, usual: number, chordRatio: number, path: string): ScaledRow {
  const diameter = requirePositive(`${path}.diameter`, row.diameter ?? usual);
  const state: RotorState = {
    diameter,
    speed: RPM * requirePositive(`${path}.rpm`, row.rpm),
    density: requirePositive(`${path}.density`, row.density ?? STANDARD_AIR_DENSITY),
  };
  const units = propellerUnits(state);
  return {
    speed: state.speed,
    logReynolds: Math.log(
      propellerReynolds(state, chordRatio * diameter, airFrom(DEFAULT_WEATHER).viscosity),
    ),
    thrust: requireFinite(`${path}.thrust`, row.thrust),
    shaftPower:
      row.shaftPower === undefined ? null : requireNonNegative(`${path}.shaftPower`, row.shaftPower),
    thrustUnit: units.thrust,
    powerUnit: units.power,
  };
}

function differentSpeeds(speeds: readonly number[]): number {
  const sorted = [...speeds].sort((a, b) => a - b);
  let count = 0;
  let last = 0;
  for (const speed of sorted) {
    if (!(speed > last * (1 + SAME_SPEED))) continue;
    count += 1;
    last = speed;
  }
  return count;
}

interface LineFit {
  readonly line: ReynoldsLine;
  readonly residualSd: number;
  readonly standardError: number | null;
  readonly covariance: LineCovariance | null;
  readonly dof: number;
}

interface ScaledValue {
  readonly unit: number;
  readonly log: number;
  readonly value: number;
}

/** With a drift where it is shown, without one elsewhere. */
function fitLine(values: readonly ScaledValue[], speeds: number): LineFit {
  const response = values.map(({ value }) => value);
  if (speeds >= SPEEDS_FOR_DRIFT) {
    const { coefficients, standardErrors, residualSd, dof, covariance } = fitLinear({
      design: values.map(({ unit, log }) => [unit, unit * log]),
      response,
    });
    const [level, drift] = coefficients;
    const limit = standardErrors && studentQuantile((1 + CONFIDENCE) / 2, dof) * standardErrors[1];
    if (standardErrors && limit !== null && Math.abs(drift) > limit)
      return { line: [level, drift], residualSd, standardError: standardErrors[0], covariance, dof };
  }
  const { coefficients, standardErrors, residualSd, dof } = fitLinear({
    design: values.map(({ unit }) => [unit]),
    response,
  });
  const standardError = standardErrors?.[0] ?? null;
  const covariance =
    standardError === null
      ? null
      : [
          [standardError ** 2, 0],
          [0, 0],
        ];
  return { line: [coefficients[0], 0], residualSd, standardError, covariance, dof };
}

function notesFor(speeds: number, rows: number, powered: number, chordAssumed: boolean): Note[] {
  const notes: Note[] = [];
  const note = (code: string, message: string) => notes.push({ code, message });
  if (rows === 1)
    note("no-residual", "A single row leaves no residual: the uncertainty is unknown. Add speeds.");
  if (speeds < SPEEDS_FOR_DRIFT)
    note(
      "no-drift-seen",
      `${speeds === 1 ? "One speed" : "Two speeds"} can't show how the coefficients drift with speed (5 to 15 % is usual for small propellers). Add speeds.`,
    );
  if (powered === 0)
    note("no-shaft-power", "No shaft power: no power curve. Read the torque or the motor's current.");
  if (chordAssumed)
    note("chord-assumed", "The chord is taken as a tenth of the diameter; it only labels Re.");
  return notes;
}
