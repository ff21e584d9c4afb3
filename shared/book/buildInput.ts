import type { Build } from "../model/build.ts";
import type { StoredOf } from "../model/record.ts";
import type { CellState } from "../physics/cells/cell.ts";
import type { MotorInput, PackInput } from "../physics/point/machine.ts";
import type { MotorBasis } from "./motorBasis.ts";

/** @returns a motor as a prediction takes it, SI */
export function motorInput(motor: MotorBasis): MotorInput {
  return { ...motor.constants, thermalResistance: motor.thermal.thermalResistance };
}

/**
 * A pack as a prediction takes it.
 *
 * @param pack - of the book
 * @param build - its cells in series where it tries another count
 * @param cell - one cell at the build's charge
 * @returns SI
 */
export function packInput(
  pack: StoredOf<"packs">,
  build: Build,
  { voltage: openCircuitVoltage, resistance: cellResistance }: CellState,
): PackInput {
  const { series, parallel, wireResistance } = pack.data;
  const wiring = { series: build.overrides.series ?? series, parallel, wireResistance };
  return { ...wiring, openCircuitVoltage, cellResistance };
}
