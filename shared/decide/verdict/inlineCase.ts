import type { AnyPredictInput } from "../../physics/predictAny.ts";
import type { LimitsInput, MotorLimits, RotorBody } from "../limits/input.ts";
import { worstName } from "./attitudeWords.ts";
import type { Case } from "./judge.ts";

/** What a cell's maker allows; null where it isn't known. */
export interface CellAllows {
  /** [A] */
  readonly maxCurrent: number | null;
  /** loaded [V] */
  readonly minimumVoltage: number | null;
}

/** What is known of a build's limits beside its prediction. */
export interface Allowed {
  readonly motor: MotorLimits;
  readonly cell: CellAllows;
  /** null: its material isn't known */
  readonly rotor: RotorBody | null;
  /** margin that is wanted [-] */
  readonly target: number;
}

/** Attitudes that must hold where none are named: the ceiling and the wall [°]. */
const ANGLES = [180, 90] as const;

/** A cell that stays at one voltage; no minimum is known where it is 0. */
function steadyPack({ pack }: AnyPredictInput, { maxCurrent, minimumVoltage }: CellAllows) {
  const { openCircuitVoltage, cellResistance, ...wiring } = pack;
  return {
    ...wiring,
    cell: {
      capacity: 1,
      minimumVoltage: minimumVoltage ?? 0,
      resistance: cellResistance,
      curve: [
        [0, openCircuitVoltage],
        [1, openCircuitVoltage],
      ] as const,
      maxCurrent: maxCurrent ?? undefined,
    },
  };
}

/**
 * A build given at one voltage as a case for its verdict.
 *
 *     the cell's V_oc the same at every charge
 *
 * @param build - as a prediction takes it, SI
 * @param allowed - limits of motor, cell and rotor [K, V, A, Pa], target [-]; null where not known
 * @returns the case, judged at that voltage
 *
 * Valid for any build that a prediction takes. Source: docs/method/verdict.md
 */
export function inlineCase(build: AnyPredictInput, allowed: Allowed): Case {
  const limits: LimitsInput = {
    build: { ...build, pack: steadyPack(build, allowed.cell), startCharge: 1 },
    motor: allowed.motor,
    rotor: allowed.rotor,
    rotorMass: null,
    fallHeight: null,
    estimated: [],
  };
  return {
    build,
    limits,
    full: null,
    attitudes: ANGLES.map((angle) => ({ name: worstName(angle), angle })),
    joints: null,
    target: allowed.target,
    contradictions: [],
  };
}
