import { STANDARD_GRAVITY } from "../../shared/physics/constants.ts";
import { predict } from "../../shared/physics/predict.ts";
import { BUILDS } from "../truthOfBuilds.ts";
import { buildTruth } from "./buildTruth.ts";
import type { Rig } from "./rig.ts";

const GRAM = STANDARD_GRAVITY / 1000;

/** @returns a pull test of a build, one pull at each state of charge, loaded in steps of 20 g */
export function pull(
  { normal, volts, head }: Rig,
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
