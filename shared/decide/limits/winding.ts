import type { LimitsInput } from "./input.ts";
import { judge, type Limit } from "./limit.ts";
import type { State } from "./state.ts";

const NO_RESISTANCE =
  "The motor's thermal resistance, or its diameter and length, from which it is estimated.";
const NO_LIMIT = "The winding's limit: the class of its wire, from the motor's maker.";

/**
 * The winding where it settles, against its limit.
 *
 *     share = (T − T_a)/(T_limit − T_a)
 *
 * @param input - limits of the motor [K], air [K]
 * @param state - where the build settles, from {@link stateOf} [K]
 * @returns the limit: T [K], T_limit [K], share of the rise that is used [-]; unknown without R_th or without a limit
 *
 * Valid for a run long enough to settle. Source: docs/method/limits.md
 */
export function windingLimit(input: LimitsInput, state: State): Limit {
  const { build, motor, estimated } = input;
  const known = build.motor.thermalResistance !== null;
  const ambient = build.air.temperature;
  return judge({
    key: "winding",
    value: known ? state.windingTemperature : null,
    limit: motor.windingLimit,
    share: (value, limit) =>
      limit > ambient ? (value - ambient) / (limit - ambient) : Number.POSITIVE_INFINITY,
    missing: known ? NO_LIMIT : NO_RESISTANCE,
    caution: "motor",
    estimated: estimated.includes("winding"),
  });
}
