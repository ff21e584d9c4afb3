import type { LimitsInput } from "./input.ts";
import { judge, type Limit } from "./limit.ts";
import type { State } from "./state.ts";

/**
 * Motor and cells at the build's charge, against what their makers allow.
 *
 *     V_m/V_rated,  I/I_max,  I_cell/I_cell,max;  cell voltage: (V_full − V_cell)/(V_full − V_min)
 *
 * @param input - limits of motor and cell [V, A]
 * @param state - where the build settles, from {@link stateOf} [V, A]
 * @returns motor voltage [V], motor current [A], cell current [A], loaded cell voltage [V], each judged
 *
 * Valid for the makers' own limits, in steady state; a start draws more for a moment. Source: the makers' sheets; docs/method/limits.md
 */
export function supplyLimits(input: LimitsInput, state: State): Limit[] {
  const { motor, build, estimated } = input;
  const { cell } = build.pack;
  const of = (key: Limit["key"], caution: Limit["caution"]) => ({
    key,
    caution,
    estimated: estimated.includes(key),
  });
  return [
    judge({
      ...of("motor-voltage", "motor"),
      value: state.motorVoltage,
      limit: motor.ratedVoltage,
      missing: "The motor's rated voltage, from its maker.",
    }),
    judge({
      ...of("motor-current", "motor"),
      value: Math.abs(state.current),
      limit: motor.maxCurrent,
      missing: "The motor's greatest current, from its maker.",
    }),
    judge({
      ...of("cell-current", "cells"),
      value: state.cellCurrent,
      limit: cell.maxCurrent ?? null,
      missing: "The cell's greatest current, from its maker.",
    }),
    judge({
      ...of("cell-voltage", "cells"),
      value: state.cellVoltage,
      limit: cell.minimumVoltage,
      share: (value, least) => (state.fullCell - value) / (state.fullCell - least),
      missing: null,
    }),
  ];
}
