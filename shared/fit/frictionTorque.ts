import { fitLinear } from "../numeric/leastSquares.ts";
import { RPM } from "../physics/motor.ts";
import type { Note } from "../physics/note.ts";
import type { MotorRow } from "./voltageFit.ts";

export interface FrictionTorque {
  /** M_c [N·m] */
  readonly frictionTorque: number;
  /** M_v [N·m·s/rad] */
  readonly viscousTorque: number;
  readonly warnings: readonly Note[];
}

/** No-load speeds must span this share of the fastest before a slope is read from them [-]. Judgement. */
const LEAST_SPAN = 0.2;

/**
 * Friction of a motor from its rows without load.
 *
 *     k_t·I₀ = M_c + M_v·ω;  one speed only: M_c = k_t·I₀, M_v = 0
 *
 * @param torquePerAmpere - k_t [N·m/A]
 * @param rows - current [A], speed [rpm], those without load marked
 * @returns M_c [N·m], M_v [N·m·s/rad], both ≥ 0, and what to know about them [-]
 *
 * Valid over the no-load speeds; neither part may push: where the line asks for it that part is left out, and said. Source: equivalent DC machine; docs/method/fits/motor.md
 */
export function fitFrictionTorque(torquePerAmpere: number, rows: readonly MotorRow[]): FrictionTorque {
  const free = rows.filter((row) => row.noLoad === true && row.rpm > 0);
  const torques = free.map((row) => torquePerAmpere * row.current);
  const speeds = free.map((row) => RPM * row.rpm);
  if (free.length === 0)
    return {
      frictionTorque: 0,
      viscousTorque: 0,
      warnings: [
        {
          code: "no-load-run-missing",
          message: "No row is marked as no-load: friction is taken as 0. Run the motor with a bare shaft.",
        },
      ],
    };
  const fastest = Math.max(...speeds);
  if (fastest - Math.min(...speeds) < LEAST_SPAN * fastest) return constantOnly(torques);
  const line = fitLinear({ design: speeds.map((speed) => [1, speed]), response: torques });
  const [frictionTorque, viscousTorque] = line.coefficients;
  if (viscousTorque < 0)
    return constantOnly(torques, {
      code: "no-load-current-falls",
      message: "The no-load current falls as the speed rises: only its mean is used, M_v is taken as 0.",
    });
  if (frictionTorque < 0) return viscousOnly(torques, speeds);
  return { frictionTorque, viscousTorque, warnings: [] };
}

function constantOnly(torques: readonly number[], note?: Note): FrictionTorque {
  const frictionTorque = torques.reduce((sum, torque) => sum + torque, 0) / torques.length;
  return { frictionTorque, viscousTorque: 0, warnings: note ? [note] : [] };
}

function viscousOnly(torques: readonly number[], speeds: readonly number[]): FrictionTorque {
  const fit = fitLinear({ design: speeds.map((speed) => [speed]), response: torques });
  return {
    frictionTorque: 0,
    viscousTorque: fit.coefficients[0],
    warnings: [
      {
        code: "no-load-current-steep",
        message: "The no-load current rises faster than the speed: M_c is taken as 0, all friction as M_v.",
      },
    ],
  };
}
