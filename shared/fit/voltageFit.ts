import { NotEnoughDataError, requireNonNegative, requirePositive } from "../numeric/errors.ts";
import { fitLinear } from "../numeric/leastSquares.ts";
import { scaledConditioning } from "../numeric/singularValues.ts";
import { RPM } from "../physics/motor.ts";
import { formatDigits, formatQuantity } from "../units/format.ts";

/** One row of a motor test at full throttle. */
export interface MotorRow {
  /** at the motor or its driver [V] */
  readonly voltage: number;
  /** [A] */
  readonly current: number;
  /** 0 = blocked */
  readonly rpm: number;
  readonly noLoad?: boolean;
}

export interface VoltageFit {
  /** k_e, the same number as k_t [V·s/rad] */
  readonly backEmf: number;
  /** R_m, driver included where the voltage was read before it [Ω] */
  readonly resistance: number;
  /** of (R_m, k_e) [Ω², Ω·V·s/rad, (V·s/rad)²]; null where no residual is left over or R_m was given */
  readonly covariance: readonly (readonly number[])[] | null;
  /** null where unknown [V·s/rad, Ω] */
  readonly standardErrors: { readonly backEmf: number | null; readonly resistance: number | null };
  /** of the scaled columns; 1 where R_m was given [-] */
  readonly conditionNumber: number;
  /** of V, every row counting alike; 0 where no residual is left over [V] */
  readonly residualSd: number;
  /** rows less constants fitted; 0 where repeats are all there is [-] */
  readonly dof: number;
  /** whether each of the two constants is known by itself; together they predict well even where not */
  readonly measuredSeparately: boolean;
}

/** A constant that is uncertain by more than this share counts as not known [-]. Judgement; docs/method/fits/motor.md, Measured separately. */
const LARGEST_DOUBT = 0.15;
/** What a hand multimeter and an optical tachometer are good to [-]. Common practice, no source. */
const READING_DOUBT = 0.01;
/** With nothing left over to judge by, reading uncertainty times the condition number stands for the uncertainty [-]. */
const CONDITION_WITHOUT_RESIDUALS = LARGEST_DOUBT / READING_DOUBT;
/** Beyond this condition number small standard errors are luck or rounding [-]. Judgement. */
const CONDITION_ALWAYS = 100;
/** Beyond this condition number the columns are one and the same [-]. */
const CONDITION_SINGULAR = 1e7;

const NEED =
  "Give an ohmmeter's reading of the winding, add rows at loads further apart, or add a no-load run.";

/**
 * Back-EMF constant and resistance of a motor as a pair, whether or not each is known by itself.
 *
 *     V = R_m·I + k_e·ω by least squares
 *
 * @param rows - voltage [V], current [A], speed [rpm], at full throttle
 * @param resistance - R_m where it is known [Ω]
 * @returns k_e [V·s/rad], R_m [Ω], their covariance, and whether they are measured separately [-]
 * @throws {OutOfRangeError} on a negative reading, by its path; on a resistance that is not above 0
 * @throws {NotEnoughDataError} where not even the pair is known: no turning row, one ratio of current to speed
 *
 * Valid for the equivalent DC machine at full throttle; inductance is ignored. Source: docs/method/fits/motor.md
 */
export function fitVoltage(rows: readonly MotorRow[], resistance?: number): VoltageFit {
  const used = usableRows(rows);
  if (!used.some((row) => row.rpm > 0))
    throw new NotEnoughDataError(
      "No row shows the motor turning.",
      "Add rows at full throttle with the speed read: without load and under load.",
      "rows",
    );
  return resistance === undefined
    ? fitBoth(used)
    : fitGivenResistance(used, requirePositive("resistance", resistance));
}

/** @returns the rows that say something: those without voltage, or with neither current nor speed, do not @throws {OutOfRangeError} on a number below 0 */
export function usableRows(rows: readonly MotorRow[]): MotorRow[] {
  rows.forEach((row, i) => {
    requireNonNegative(`rows.${i}.voltage`, row.voltage);
    requireNonNegative(`rows.${i}.current`, row.current);
    requireNonNegative(`rows.${i}.rpm`, row.rpm);
  });
  return rows.filter((row) => row.voltage > 0 && (row.current > 0 || row.rpm > 0));
}

function fitGivenResistance(rows: readonly MotorRow[], resistance: number): VoltageFit {
  const fit = fitLinear({
    design: rows.map((row) => [RPM * row.rpm]),
    response: rows.map((row) => row.voltage - resistance * row.current),
  });
  const [backEmf] = fit.coefficients;
  if (!(backEmf > 0))
    throw new NotEnoughDataError(
      `A resistance of ${resistance} Ω takes more than the whole voltage at these currents.`,
      "Check the ohmmeter's reading (leads taken off) and the currents.",
      "resistance",
    );
  const scattered = scatters(rows, 1);
  return {
    backEmf,
    resistance,
    covariance: null,
    standardErrors: { backEmf: scattered ? (fit.standardErrors?.[0] ?? null) : null, resistance: null },
    conditionNumber: 1,
    residualSd: scattered ? fit.residualSd : 0,
    dof: scattered ? fit.dof : 0,
    measuredSeparately: true,
  };
}

function fitBoth(rows: readonly MotorRow[]): VoltageFit {
  const design = rows.map((row) => [row.current, RPM * row.rpm]);
  const singular = rows.length < 2 || design.every(([current]) => current === 0);
  const conditionNumber = singular ? Number.POSITIVE_INFINITY : scaledConditioning(design).conditionNumber;
  if (!(conditionNumber < CONDITION_SINGULAR)) throw notSeparate(rows);
  const fit = fitLinear({ design, response: rows.map((row) => row.voltage) });
  const [resistance, backEmf] = fit.coefficients;
  const errors = scatters(rows, 2) ? fit.standardErrors : null;
  const [resistanceError, backEmfError] = errors ?? [null, null];
  const sure =
    resistanceError === null || backEmfError === null
      ? conditionNumber <= CONDITION_WITHOUT_RESIDUALS
      : conditionNumber <= CONDITION_ALWAYS &&
        resistanceError <= LARGEST_DOUBT * resistance &&
        backEmfError <= LARGEST_DOUBT * backEmf;
  return {
    backEmf,
    resistance,
    covariance: errors ? fit.covariance : null,
    standardErrors: { backEmf: backEmfError, resistance: resistanceError },
    conditionNumber,
    residualSd: errors ? fit.residualSd : 0,
    dof: errors ? fit.dof : 0,
    measuredSeparately: sure && resistance > 0 && backEmf > 0,
  };
}

/** Repeats of one and the same row are no second witness. */
function scatters(rows: readonly MotorRow[], constants: number): boolean {
  return new Set(rows.map((row) => `${row.voltage} ${row.current} ${row.rpm}`)).size > constants;
}

/**
 * What to answer when K_v and R_m can't be measured separately: the combination that is known, and what to measure next.
 *
 *     K_v = n/(V − R_m·I) at the mean row
 *
 * @param rows - voltage [V], current [A], speed [rpm]
 * @returns the error to throw [-]
 *
 * Valid for any rows with a voltage. Source: docs/method/fits/motor.md
 */
export function notSeparate(rows: readonly MotorRow[]): NotEnoughDataError {
  const mean = (read: (row: MotorRow) => number) =>
    rows.reduce((sum, row) => sum + read(row), 0) / rows.length;
  const voltage = mean((row) => row.voltage);
  const current = mean((row) => row.current);
  const rpm = mean((row) => row.rpm);
  const known = `K_v = ${rpm.toFixed(0)}/(${formatDigits(voltage, 4)} − ${formatDigits(current, 3)}·R) rpm/V`;
  return new NotEnoughDataError(
    `The rows can't tell the speed constant from the resistance. Known is their combination: at ${formatDigits(current, 3)} A and ${formatDigits(voltage, 4)} V the motor turns ${formatQuantity(rpm * RPM, "speed", { decimals: 0 })}, so ${known}.`,
    NEED,
    "rows",
  );
}
