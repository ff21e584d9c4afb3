import { speedConstant } from "../physics/motor.ts";
import type { Note } from "../physics/note.ts";
import { fitFrictionTorque } from "./frictionTorque.ts";
import { fitVoltage, type MotorRow, notSeparate, usableRows, type VoltageFit } from "./voltageFit.ts";

export interface MotorFitRequest {
  readonly rows: readonly MotorRow[];
  /** an ohmmeter's reading [Ω] */
  readonly resistance?: number;
}

export interface MotorFit {
  /** K_v [rpm/V] */
  readonly kv: number;
  /** R_m [Ω] */
  readonly resistance: number;
  /** M_c [N·m] */
  readonly frictionTorque: number;
  /** M_v [N·m·s/rad] */
  readonly viscousTorque: number;
  /** of K_v and R_m; null where one was given or no residual is left over [-] */
  readonly correlation: number | null;
  /** [rpm/V, Ω]; null where unknown */
  readonly standardErrors: { readonly kv: number | null; readonly resistance: number | null };
  /** of V, every row counting alike; 0 where no residual is left over [V] */
  readonly residualSd: number;
  /** k_e and R_m as a pair, with their covariance */
  readonly voltage: VoltageFit;
  readonly warnings: readonly Note[];
}

/**
 * Constants of a motor from rows at full throttle, loaded, blocked and without load.
 *
 *     V = R_m·I + k_e·ω by least squares;  k_t·I₀ = M_c + M_v·ω from the rows without load;  K_v = 60/(2π·k_e)
 *
 * @param request - rows: voltage [V], current [A], speed [rpm], no-load mark; resistance [Ω] where an ohmmeter read it
 * @returns K_v [rpm/V], R_m [Ω], M_c [N·m], M_v [N·m·s/rad], their uncertainty and its correlation [-]
 * @throws {OutOfRangeError} on a negative reading, by its path
 * @throws {NotEnoughDataError} where K_v and R_m can't be measured separately (either uncertain by more than 15 %, R_m ≤ 0, columns nearly one line); the message gives the combination that is known
 *
 * Valid for the equivalent DC machine; inductance is ignored, a driver's resistance counts to R_m where the voltage was read before it.
 * Source: docs/method/fits/motor.md
 */
export function fitMotor(request: MotorFitRequest): MotorFit {
  const rows = usableRows(request.rows);
  const fit = fitVoltage(request.rows, request.resistance);
  if (!fit.measuredSeparately) throw notSeparate(rows);
  const kv = speedConstant(fit.backEmf);
  const friction = fitFrictionTorque(fit.backEmf, rows);
  const { backEmf: backEmfError, resistance: resistanceError } = fit.standardErrors;
  return {
    kv,
    resistance: fit.resistance,
    frictionTorque: friction.frictionTorque,
    viscousTorque: friction.viscousTorque,
    correlation: correlationOf(fit),
    standardErrors: {
      kv: backEmfError === null ? null : (kv * backEmfError) / fit.backEmf,
      resistance: resistanceError,
    },
    residualSd: fit.residualSd,
    voltage: fit,
    warnings: [...rowNotes(request.rows, rows, fit), ...friction.warnings],
  };
}

/** K_v falls as k_e rises: the sign turns. */
function correlationOf({ covariance }: VoltageFit): number | null {
  if (covariance === null) return null;
  const [[resistance, both], [, backEmf]] = covariance;
  const size = Math.sqrt(resistance * backEmf);
  return size > 0 ? -both / size : null;
}

function rowNotes(given: readonly MotorRow[], used: readonly MotorRow[], fit: VoltageFit): Note[] {
  const notes: Note[] = [];
  if (used.length < given.length)
    notes.push({
      code: "empty-rows",
      message: `${given.length - used.length} rows without voltage, or with neither current nor speed, were left out.`,
    });
  if (fit.standardErrors.backEmf === null)
    notes.push({
      code: "no-residual",
      message:
        "The rows leave no residual: the uncertainty of the constants is unknown. Add rows at other loads.",
    });
  return notes;
}
