import { requirePositive } from "../../numeric/errors.ts";
import { drawOf } from "../../physics/rundown/draw.ts";
import type { Drawn } from "../../physics/rundown/drawn.ts";
import type { RundownInput } from "../../physics/rundown.ts";

/** The same build at its voltage and at the motor's rated one. */
export interface OverVoltage {
  /** V_m over the rated voltage [-] */
  readonly ratio: number;
  /** what presses the vehicle on */
  readonly of: "pressure" | "thrust";
  /** of the cavity's pressure, or the thrust, over that at the rated voltage [-] */
  readonly pressureRatio: number;
  /** of the winding's heat I²R over that at the rated voltage [-] */
  readonly heatRatio: number;
}

/** The build on a stiff source in its pack's place, which holds the driver's output at one voltage. */
function onSource(build: RundownInput, voltage: number): Drawn {
  const { driverResistance } = build.supply;
  const source: RundownInput = {
    ...build,
    pack: { series: 1, parallel: 1, wireResistance: 0, cell: build.pack.cell },
    supply: { duty: 1, driverResistance, auxCurrent: 0 },
  };
  const stiff = { voltage, resistance: 0 };
  return drawOf(source, stiff).at(stiff, build.air.temperature);
}

const pushOf = ({ pressure, suction }: Drawn) => pressure ?? suction;
const heatOf = ({ current, windingResistance }: Drawn) => current ** 2 * windingResistance;

/**
 * What a voltage away from the rated one does to this build, by solving it at both.
 *
 *     Δp(V)/Δp(V_rated),  I²R(V)/I²R(V_rated), each at its own operating point, just switched on, the winding cold
 *
 * @param build - with its cell, all SI [-]
 * @param voltage - δ·V_b, at the driver's output [V]
 * @param rated - of the motor [V]
 * @returns ratios of voltage, pressure and heat [-]; null where the rotor stands at either voltage
 * @throws {OutOfRangeError} on a rated voltage that is not above 0
 *
 * Valid from the start on; a winding that warms takes a little off both. The rule of thumb is pressure with the square and heat with the cube or worse. Source: docs/method/operating-point.md
 */
export function overVoltageOf(build: RundownInput, voltage: number, rated: number): OverVoltage | null {
  const ratio = voltage / requirePositive("motor.ratedVoltage", rated);
  if (!(voltage > 0)) return null;
  const [at, before] = [onSource(build, voltage), onSource(build, rated)];
  if (!(at.works && before.works && pushOf(before) > 0)) return null;
  return {
    ratio,
    of: at.pressure === null ? "thrust" : "pressure",
    pressureRatio: pushOf(at) / pushOf(before),
    heatRatio: heatOf(at) / heatOf(before),
  };
}
