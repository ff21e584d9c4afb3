import { loadsOf, underLoad } from "../../physics/rundown/cycle.ts";
import type { RundownInput } from "../../physics/rundown.ts";

/** @returns the build under the least and under the greatest drive current of its cycle: the one leaves the motor most voltage, the other asks most of the cells; the same object twice without a cycle */
export function underExtremes(build: RundownInput): {
  readonly light: RundownInput;
  readonly heavy: RundownInput;
} {
  const { cycle } = build;
  if (!cycle || cycle.length === 0) return { light: build, heavy: build };
  const loads = loadsOf(cycle);
  return { light: underLoad(build, loads[0]), heavy: underLoad(build, loads[loads.length - 1]) };
}
