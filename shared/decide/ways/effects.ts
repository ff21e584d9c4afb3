import { answerOrNull } from "../../numeric/errors.ts";
import { chargeAt } from "../../physics/cells/cell.ts";
import type { AnyPredictInput } from "../../physics/predictAny.ts";
import { type CellInput, runDown } from "../../physics/rundown.ts";
import type { Pulled } from "../wanted.ts";

export interface Change {
  readonly now: number;
  readonly after: number;
}

/** What a change of a handle does beside the margin; null where it can't be known. */
export interface Effects {
  /** settled [K] */
  readonly windingTemperature: Change | null;
  /** [m/s] */
  readonly tipSpeed: Change | null;
  /** rotor stress after over now [-] */
  readonly rotorStress: number | null;
  /** [A] */
  readonly packCurrent: Change | null;
  /** until the cell is empty or at its minimum [s] */
  readonly runTime: Change | null;
}

/** A build, its point and its run time, which is worked out when asked for. */
export interface State {
  readonly build: AnyPredictInput;
  readonly point: Pulled["point"];
  readonly runTime: () => number | null;
}

/**
 * Time until a build's pack is done, from the charge that its voltage at rest says.
 *
 *     end of {@link runDown}
 *
 * @param build - of either kind, all SI [-]
 * @param cell - of its pack [SI]; null: not known
 * @returns time [s]; null without a cell, outside its curve, at no charge, or where there is no run
 *
 * Valid and source: as {@link runDown}
 */
export function runTimeOf(build: AnyPredictInput, cell: CellInput | null): number | null {
  const startCharge = cell && chargeAt(cell, build.pack.openCircuitVoltage);
  if (!cell || !startCharge) return null;
  const { series, parallel, wireResistance } = build.pack;
  const pack = { series, parallel, wireResistance, cell };
  return answerOrNull(() => runDown({ ...build, pack, startCharge, angles: [] }).end.time);
}

function changed(now: number | null | undefined, after: number | null | undefined): Change | null {
  return typeof now === "number" && typeof after === "number" ? { now, after } : null;
}

/**
 * What a change does beside the margin.
 *
 *     rotor stress ∝ ρ·u² for rotors of one shape and material:  σ₂/σ₁ = (u₂/u₁)²
 *
 * @param now - the build as it stands [SI]
 * @param after - the build with the change [SI]
 * @returns winding [K], tip speed [m/s], stress [-], pack current [A], run time [s]
 *
 * Valid for rotors of one shape. Source: Timoshenko & Goodier, Theory of Elasticity, art. 32 (disc stress is ρω²r² times a shape factor)
 */
export function effectsOf(now: State, after: State): Effects {
  const tip = ({ build, point }: State) => (point ? (point.speed * build.rotor.diameter) / 2 : null);
  const winding = ({ build, point }: State) =>
    build.motor.thermalResistance === null ? null : point?.windingTemperature;
  const tipSpeed = changed(tip(now), tip(after));
  return {
    windingTemperature: changed(winding(now), winding(after)),
    tipSpeed,
    rotorStress: tipSpeed && tipSpeed.now > 0 ? (tipSpeed.after / tipSpeed.now) ** 2 : null,
    packCurrent: changed(now.point?.packCurrent, after.point?.packCurrent),
    runTime: changed(now.runTime(), after.runTime()),
  };
}
