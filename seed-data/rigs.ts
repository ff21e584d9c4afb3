import { bleedFlow } from "../shared/fit/bleed.ts";
import { findRoot } from "../shared/numeric/root.ts";
import { type Air, airFrom } from "../shared/physics/air.ts";
import { STANDARD_GRAVITY } from "../shared/physics/constants.ts";
import { frictionFromNoLoad, type MotorConstants, RPM, torqueConstant } from "../shared/physics/motor.ts";
import { openCircuitVoltage } from "../shared/physics/pack.ts";
import { assembleMachine, psiAt } from "../shared/physics/point/machine.ts";
import { balancedSpeed } from "../shared/physics/point/speed.ts";
import { type PredictInput, predict } from "../shared/physics/predict.ts";
import { EDGE_LOSS, gapFlow } from "../shared/physics/restriction/lipGap.ts";
import { noiseSource } from "./noise.ts";
import { BUILDS, CELL_CURVE, FAMILIES, MOTORS, PACKS, SKIRTS, SURFACES } from "./truth.ts";

const DAY = { temperature: 291.15, pressure: 100400, humidity: 0.68 };
const DAY_AS_READ = {
  temperature: { value: 18, unit: "°C" },
  pressure: { value: 1004, unit: "hPa" },
  humidity: { value: 68, unit: "%" },
};
export const PLATE = [
  { diameter: 0.004, thickness: 0.003, count: 12 },
  { diameter: 0.01, thickness: 0.003, count: 36 },
];
const PLATE_AS_READ = {
  holes: PLATE.map((kind) => ({
    diameter: { value: kind.diameter * 1000, unit: "mm" },
    thickness: { value: kind.thickness * 1000, unit: "mm" },
    count: kind.count,
    edge: "sharp",
  })),
};
/** what the invented plate lets through, against the tables for holes [-] */
const PLATE_TRUTH = 1.012;
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
const GRAM = STANDARD_GRAVITY / 1000;

const INVENTED = "Invented for the demo.";
type Id<T> = keyof T & string;

function plateFlow(open: readonly number[], air: Air, pressure: number): number {
  const holes = PLATE.map((kind, k) => ({ ...kind, count: open[k] })).filter((kind) => kind.count > 0);
  if (holes.length === 0 || !(pressure > 0)) return 0;
  return PLATE_TRUTH * bleedFlow({ holes, air, pressure }).flow;
}

function motorTruth(id: Id<typeof MOTORS>): MotorConstants {
  const { kv, resistance, noLoadCurrent, viscousTorque } = MOTORS[id];
  return { kv, resistance, viscousTorque, frictionTorque: frictionFromNoLoad(kv, noLoadCurrent) };
}

function buildTruth(id: string, charge: number): PredictInput {
  const build = BUILDS[id];
  const skirt = SKIRTS[build.skirt as Id<typeof SKIRTS>];
  const surface = SURFACES[build.surface as Id<typeof SURFACES>];
  const pack = PACKS[build.pack as Id<typeof PACKS>];
  const { psi, lambda } = FAMILIES[build.rotor as Id<typeof FAMILIES>];
  const { name: _name, friction, share, ...shape } = skirt;
  return {
    air: DAY,
    rotor: { diameter: build.diameter, psi, lambda, phiMin: 0, phiMax: 1, sizeCorrection: null },
    motor: {
      ...motorTruth(build.motor as Id<typeof MOTORS>),
      thermalResistance: MOTORS[build.motor as Id<typeof MOTORS>].thermalResistance,
    },
    pack: {
      series: pack.series,
      parallel: 1,
      openCircuitVoltage: openCircuitVoltage(CELL_CURVE, charge),
      cellResistance: pack.cellResistance,
      wireResistance: pack.wire,
    },
    supply: { duty: 1, driverResistance: 0.02, auxCurrent: build.aux },
    skirt: { ...shape, roughness: surface.roughness, measuredLeak: null },
    vehicle: {
      mass: build.mass,
      wheelFriction: surface.wheelFriction,
      skirtFriction: friction,
      skirtShare: share,
      rollingResistance: 0.02,
      driven: "both",
      wheelbase: 0.12,
      track: 0.1,
      cgHeight: 0.024,
      cgFromRear: 0.058,
      suctionFromRear: 0.06,
      jolt: 0,
      jetArea: null,
      jetAngle: 0,
    },
  };
}

/** The invented test rigs: each call is one bench test of the demo, read off the truth through noisy instruments. */
export function rigs(seed: number) {
  const { normal, read } = noiseSource(seed);
  const air = airFrom(DAY);
  const head = (kind: string, title: string, date: string) => ({
    kind,
    title,
    date,
    air: DAY_AS_READ,
    note: INVENTED,
  });
  const volts = (value: number) => ({ value: read(value, 0.003, 0.01), unit: "V" });
  const amps = (value: number) => ({ value: read(value, 0.008, 0.01), unit: "A" });
  const rpm = (speed: number) => ({ value: read(speed / RPM, 0.003, 10), unit: "rpm" });
  const pascals = (value: number) => ({ value: read(value, 0.007, 1, 1.5), unit: "Pa" });

  function curve(
    rotor: Id<typeof FAMILIES>,
    diameter: number,
    motor: Id<typeof MOTORS>,
    supply: number,
    date: string,
  ) {
    const { psi, lambda, name } = FAMILIES[rotor];
    const machine = assembleMachine({
      rotor: { diameter, psi, lambda, phiMin: 0, phiMax: 1, sizeCorrection: null },
      motor: { ...motorTruth(motor), thermalResistance: null },
      pack: { series: 1, parallel: 1, openCircuitVoltage: supply, cellResistance: 0.04, wireResistance: 0 },
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
    const rows = OPEN_STATES.map((open) => {
      const excess = (phi: number) => plateFlow(open, air, Math.max(0, at(phi).pressure)) - at(phi).flow;
      const phi = open.every((count) => count === 0) ? 0 : findRoot(excess, 1e-9, machine.phiEnd).root;
      const point = at(phi);
      return {
        speed: rpm(point.speed),
        pressure: pascals(point.pressure),
        open,
        current: amps(point.current),
        voltage: volts(supply - 0.04 * point.current),
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

  function motor(id: Id<typeof MOTORS>, date: string, supplies: readonly number[], ohmmeter: boolean) {
    const truth = motorTruth(id);
    const k = torqueConstant(truth.kv);
    const row = (voltage: number, current: number, noLoad: boolean) => {
      const speed = (voltage - current * truth.resistance) / k;
      return { voltage: volts(voltage), current: amps(current), speed: rpm(speed), noLoad };
    };
    const idle = (voltage: number) =>
      (truth.frictionTorque + (truth.viscousTorque * voltage) / k) /
      (k + (truth.viscousTorque * truth.resistance) / k);
    const rows = supplies.flatMap((voltage) => [
      row(voltage, idle(voltage), true),
      ...[0.1, 0.18, 0.28].map((share) => row(voltage, (share * voltage) / truth.resistance, false)),
    ]);
    const resistance = ohmmeter
      ? { resistance: { value: read(truth.resistance, 0.02, 0.01), unit: "Ω" } }
      : {};
    return {
      ...head("motor", `${MOTORS[id].name}, ${supplies.length} voltages`, date),
      motor: id,
      ...resistance,
      instruments: { voltage: "multimeter-volts", current: "multimeter-amps", speed: "optical-tachometer" },
      rows,
    };
  }

  function leak(skirt: Id<typeof SKIRTS>, surface: Id<typeof SURFACES>, shim: number | null, date: string) {
    const { perimeter, land, edge, gap, name } = SKIRTS[skirt];
    const lip = {
      perimeter,
      land,
      lossSum: EDGE_LOSS[edge],
      height: (shim ?? gap) + SURFACES[surface].roughness,
    };
    const rows = [80, 150, 260, 420, 650, 900, 1250].map((pressure) => {
      const flow = gapFlow(lip, air, pressure);
      const open = [12, Math.min(36, Math.max(1, Math.round(flow / 0.0009)))];
      const drop = findRoot((p) => plateFlow(open, air, p) - flow, 1e-3, 2e4).root;
      return { pressure: pascals(pressure), platePressure: pascals(drop), open };
    });
    return {
      ...head("leak", `${name} on ${SURFACES[surface].name.toLowerCase()}, openings taped`, date),
      skirt,
      surface,
      ...(shim === null ? {} : { gap: { value: shim * 1000, unit: "mm" } }),
      flowFrom: "bleed-plate",
      plate: PLATE_AS_READ,
      instruments: { pressure: { percent: 0.7, absolute: { value: 1.5, unit: "Pa" } } },
      rows,
    };
  }

  function friction(
    surface: Id<typeof SURFACES>,
    contact: "wheels" | "skirt",
    date: string,
    skirt: Id<typeof SKIRTS> | null = null,
  ) {
    const mu = contact === "wheels" ? SURFACES[surface].wheelFriction : SURFACES[surface].skirtFriction;
    const rows = Array.from({ length: 6 }, () => {
      const slips = (Math.atan(mu * (1 + 0.04 * normal())) * 180) / Math.PI;
      const held = Math.floor(slips);
      return { held: { value: held, unit: "°" }, slid: { value: held + 1, unit: "°" } };
    });
    return {
      ...head(
        "friction",
        `${contact === "wheels" ? "Wheels" : "Skirt"} on ${SURFACES[surface].name.toLowerCase()}`,
        date,
      ),
      surface,
      contact,
      skirt,
      instruments: { angle: "tilt-board" },
      rows,
    };
  }

  function pull(
    buildId: string,
    direction: "straight-off" | "ceiling" | "along",
    date: string,
    charges: readonly number[],
  ) {
    const { mass, charge: _charge, aux: _aux, note: _note, name, ...parts } = BUILDS[buildId];
    const rigGrams = Math.round(mass * 700);
    const step = 20;
    const rows = charges.map((charge) => {
      const truth = buildTruth(buildId, charge);
      const { suction, point } = predict(truth);
      const force = suction * (1 + 0.035 * normal());
      const rig = rigGrams * GRAM;
      const load = {
        "straight-off": force + rig,
        ceiling: force - rig,
        along: truth.vehicle.wheelFriction * (force + rig),
      }[direction];
      const held = Math.max(0, Math.floor(load / GRAM / step) * step);
      return {
        held: { value: held, unit: "g" },
        letGo: { value: held + step, unit: "g" },
        voltage: volts(point?.packVoltage ?? 0),
      };
    });
    const { rotor, motor: motorId, pack, skirt, surface, diameter } = parts;
    return {
      ...head("pull", `${name}, ${direction.replace("-", " ")}`, date),
      rotor,
      motor: motorId,
      pack,
      skirt,
      surface,
      diameter: { value: Math.round(diameter * 1e4) / 10, unit: "mm" },
      direction,
      rigMass: { value: rigGrams, unit: "g" },
      instruments: { load: "kitchen-scale", voltage: "multimeter-volts" },
      rows,
    };
  }

  return { curve, motor, leak, friction, pull, buildTruth };
}
