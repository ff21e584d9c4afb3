import { findRoot } from "../../shared/numeric/root.ts";
import type { Air } from "../../shared/physics/air.ts";
import { assembleMachine, psiAt } from "../../shared/physics/point/machine.ts";
import { balancedSpeed } from "../../shared/physics/point/speed.ts";
import { FAMILIES, type MOTORS } from "../truth.ts";
import { DAY, type Id, motorTruth, PLATE_AS_READ, plateFlow, type Rig } from "./rig.ts";

const OPEN_STATES = [
  [0, 0],
  [4, 0],
  [12, 0],
  [12, 2],
  [12, 5],
  [12, 8],
  [12, 12],
  [12, 18],
  [12, 26],
  [12, 36],
];
/** of the bench supply [Ω] */
const SUPPLY_RESISTANCE = 0.04;

/** The rotor in its duct on a motor and a supply, at any flow coefficient. */
function turning(
  rotor: Id<typeof FAMILIES>,
  diameter: number,
  motor: Id<typeof MOTORS>,
  supply: number,
  air: Air,
) {
  const { psi, lambda } = FAMILIES[rotor];
  const machine = assembleMachine({
    rotor: { diameter, psi, lambda, phiMin: 0, phiMax: 1, sizeCorrection: null },
    motor: { ...motorTruth(motor), thermalResistance: null },
    pack: {
      series: 1,
      parallel: 1,
      openCircuitVoltage: supply,
      cellResistance: SUPPLY_RESISTANCE,
      wireResistance: 0,
    },
    supply: { duty: 1, driverResistance: 0.02, auxCurrent: 0 },
    air,
    ambient: DAY.temperature,
  });
  const at = (phi: number) => {
    const balance = balancedSpeed(machine, phi);
    const u = balance.speed * machine.radius;
    return {
      ...balance,
      flow: phi * machine.area * u,
      pressure: 0.5 * air.density * u * u * psiAt(machine, phi, u),
    };
  };
  return { at, phiEnd: machine.phiEnd };
}

/** @returns a curve test of a rotor on a motor at one supply [V], read through the bleed plate */
export function curve(
  { air, rpm, pascals, amps, volts, head }: Rig,
  rotor: Id<typeof FAMILIES>,
  diameter: number,
  motor: Id<typeof MOTORS>,
  supply: number,
  date: string,
) {
  const { name } = FAMILIES[rotor];
  const { at, phiEnd } = turning(rotor, diameter, motor, supply, air);
  const rows = OPEN_STATES.map((open) => {
    const excess = (phi: number) => plateFlow(open, air, Math.max(0, at(phi).pressure)) - at(phi).flow;
    const phi = open.every((count) => count === 0) ? 0 : findRoot(excess, 1e-9, phiEnd).root;
    const point = at(phi);
    return {
      speed: rpm(point.speed),
      pressure: pascals(point.pressure),
      open,
      current: amps(point.current),
      voltage: volts(supply - SUPPLY_RESISTANCE * point.current),
    };
  });
  return {
    ...head("curve", `${name}, ${Math.round(diameter * 1000)} mm at ${supply} V`, date),
    rotor,
    diameter: { value: Math.round(diameter * 1e4) / 10, unit: "mm" },
    motor,
    flowFrom: "bleed-plate",
    plate: PLATE_AS_READ,
    instruments: {
      pressure: { percent: 0.7, absolute: { value: 1.5, unit: "Pa" } },
      speed: { percent: 0.3 },
      current: { percent: 1 },
    },
    rows,
  };
}
