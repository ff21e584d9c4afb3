import type { LimitsInput } from "./input.ts";
import { judge, type Limit } from "./limit.ts";
import type { State } from "./state.ts";

const estimatedIn = ({ estimated }: LimitsInput, key: Limit["key"]) => estimated.includes(key);

/**
 * The motor at the build's charge, against what its maker allows.
 *
 *     V_m/V_rated,  I/I_max
 *
 * @param input - limits of the motor [V, A]
 * @param state - where the build runs, from {@link stateOf} [V, A]
 * @returns voltage [V] and current [A], each judged
 *
 * Valid for the maker's own limits; a motor that runs up draws more for a moment. Source: the makers' sheets; docs/method/limits.md
 */
export function motorLimits(input: LimitsInput, state: State): Limit[] {
  const { ratedVoltage, maxCurrent } = input.motor;
  return [
    judge({
      key: "motor-voltage",
      caution: "motor",
      estimated: estimatedIn(input, "motor-voltage"),
      value: state.motorVoltage,
      limit: ratedVoltage,
      missing: "The motor's rated voltage, from its maker.",
    }),
    judge({
      key: "motor-current",
      caution: "motor",
      estimated: estimatedIn(input, "motor-current"),
      value: Math.abs(state.current),
      limit: maxCurrent,
      missing: "The motor's greatest current, from its maker.",
    }),
  ];
}

/**
 * The cells at the build's charge, against what their maker allows.
 *
 *     I_cell/I_cell,max,  (V_full − V_cell)/(V_full − V_min)
 *
 * @param input - limits of the cell [A, V]
 * @param state - where the build runs, from {@link stateOf} [V, A]
 * @returns current [A] and loaded voltage [V] of a cell, each judged
 *
 * Valid for equal cells. Source: the makers' sheets; docs/method/limits.md
 */
export function cellLimits(input: LimitsInput, state: State): Limit[] {
  const { cell } = input.build.pack;
  return [
    judge({
      key: "cell-current",
      caution: "cells",
      estimated: estimatedIn(input, "cell-current"),
      value: state.cellCurrent,
      limit: cell.maxCurrent ?? null,
      missing: "The cell's greatest current, from its maker.",
    }),
    judge({
      key: "cell-voltage",
      caution: "cells",
      estimated: estimatedIn(input, "cell-voltage"),
      value: state.cellVoltage,
      limit: cell.minimumVoltage > 0 ? cell.minimumVoltage : null,
      share: (value, least) => (state.fullCell.voltage - value) / (state.fullCell.voltage - least),
      missing: "The cell's minimum voltage, from its maker.",
    }),
  ];
}
