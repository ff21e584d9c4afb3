import { NotEnoughDataError, OutOfRangeError } from "../../numeric/errors.ts";
import { assemble, suctionAt } from "../assembly.ts";
import type { CellState } from "../cells/cell.ts";
import { pullOf, rideHeightOf, rigidPull } from "../hold/pull.ts";
import { type Crossing, crossingNear } from "../operatingPoint.ts";
import { assembleCircuit, circuitAt, type Machine, overcomesFriction, packAt } from "../point/machine.ts";
import { type Balance, balancedSpeed, standingBalance } from "../point/speed.ts";
import { type PredictInput, predict } from "../predict.ts";
import { atCell } from "../predictAny.ts";
import { type PropellerPredictInput, predictPropeller } from "../propeller.ts";
import { suctionByGap } from "../pullByGap.ts";
import type { Leak } from "../restriction/leak.ts";
import { windingResistance } from "../winding.ts";
import type { Draw } from "./drawn.ts";
import type { RundownInput } from "./input.ts";
import { keptDraw } from "./kept.ts";
import { keptThrustDraw } from "./keptThrust.ts";

/** A throttle that nothing controls. */
const fixedAt = ({ supply: { duty } }: Pick<PredictInput, "supply">) => ({
  duty,
  spare: Number.POSITIVE_INFINITY,
});

/** Looks for each crossing next to the one before; where none lasts, it is not looked for at that voltage and below it again. */
function tracker(leak: Leak): (machine: Machine) => Crossing | null {
  let near = 0;
  let lostAt = Number.NEGATIVE_INFINITY;
  return (machine) => {
    if (machine.openCircuitVoltage <= lostAt || !overcomesFriction(machine)) return null;
    const crossing = crossingNear(machine, leak, near);
    if (crossing) near = crossing.phi;
    else lostAt = machine.openCircuitVoltage;
    return crossing;
  };
}

/** Without a point the motor stands still, or turns against no flow while the fan hunts. */
function balanceWithoutPoint(machine: Machine): Balance {
  if (!overcomesFriction(machine)) return standingBalance(machine, machine.ambient);
  const balance = balancedSpeed(machine, 0);
  if (Number.isNaN(balance.speed))
    throw new NotEnoughDataError(
      "The rotor's power coefficient is below 0 at no flow, so what it draws isn't known.",
      "Measure current and speed with the rotor blocked.",
      "rotor.lambda",
    );
  return balance;
}

function ductedDraw(input: PredictInput): Draw {
  const assembly = assemble(input);
  const { machine } = assembly;
  const track = tracker(assembly.leak);
  const rideHeight = rideHeightOf(input.vehicle, input.skirt.gap);
  return {
    circuit: machine,
    at: (cell, winding) => {
      const now = circuitAt(machine, packAt(input.pack, cell), winding);
      const crossing = track(now);
      if (!crossing)
        return {
          ...balanceWithoutPoint(now),
          pressure: 0,
          suction: 0,
          pull: rigidPull(0),
          works: false,
          ...fixedAt(input),
        };
      const { speed, current, windingResistance, windingTemperature, pressure, flow } = crossing;
      const suction = suctionAt(input, assembly, pressure, flow);
      const pull = rideHeight
        ? pullOf(suction, rideHeight, suctionByGap(input, { ...assembly, machine: now }, crossing))
        : rigidPull(suction);
      const balance = { speed, current, windingResistance, windingTemperature };
      return { ...balance, pressure, suction, pull, works: true, ...fixedAt(input) };
    },
    notesAt: (cell) => predict(atCell(input, cell)).warnings,
  };
}

function propellerDraw(input: PropellerPredictInput): Draw {
  const { motor, pack } = input;
  const circuit = assembleCircuit(input);
  const predicted = (cell: CellState, windingTemperature?: number) => {
    const now = { ...motor, windingTemperature };
    return predictPropeller({ ...atCell(input, cell), motor: now }, []);
  };
  return {
    circuit,
    at: (cell, winding) => {
      const { point, suction } = predicted(cell, winding);
      if (!point) {
        const now = circuitAt(circuit, packAt(pack, cell), winding);
        const standing = standingBalance(now, input.air.temperature);
        return {
          ...standing,
          pressure: null,
          suction: 0,
          pull: rigidPull(0),
          works: false,
          ...fixedAt(input),
        };
      }
      const { speed, motorCurrent: current, windingTemperature } = point;
      const resistance = windingResistance(motor.resistance, windingTemperature);
      return {
        speed,
        current,
        windingResistance: resistance,
        windingTemperature,
        pressure: null,
        suction,
        pull: rigidPull(suction),
        works: true,
        ...fixedAt(input),
      };
    },
    notesAt: (cell) => predicted(cell).warnings,
  };
}

/**
 * Makes a build ready to be asked while its cells empty.
 *
 *     the operating point, each sought next to the one before;  a kept suction as {@link keptDraw}, a kept thrust as {@link keptThrustDraw}
 *
 * @param input - build with its cell, all SI [-]
 * @param full - one cell, full
 * @returns what it draws [A, rad/s, K] and how it pulls [Pa, N], by the cells' state and winding temperature [K]
 * @throws {OutOfRangeError} with the path of a number that can't be
 *
 * Valid for a voltage that changes slowly from call to call. Source: docs/method/run-down.md
 */
export function drawOf(input: RundownInput, full: CellState): Draw {
  const { rotor, skirt, ...rest } = input;
  const { series, parallel, wireResistance } = input.pack;
  const pack = {
    series,
    parallel,
    wireResistance,
    cellResistance: full.resistance,
    openCircuitVoltage: full.voltage,
  };
  const { keep } = input;
  if ("thrust" in rotor) {
    const open = { ...rest, rotor, pack };
    if (!keep || !("thrust" in keep)) return propellerDraw(open);
    const atFull = { ...open, supply: { ...open.supply, duty: 1 } };
    return keptThrustDraw(atFull, keep.thrust, propellerDraw(atFull));
  }
  if (!skirt) throw new OutOfRangeError("skirt", Number.NaN, "a skirt: perimeter, area, gap, land");
  const ducted = { ...rest, rotor, skirt, pack };
  if (!keep || !("pressure" in keep)) return ductedDraw(ducted);
  const atFull = { ...ducted, supply: { ...ducted.supply, duty: 1 } };
  return keptDraw(atFull, keep.pressure, ductedDraw(atFull));
}
