import { openCircuitVoltage } from "../../shared/physics/pack.ts";
import type { PredictInput } from "../../shared/physics/predict.ts";
import { CELL_CURVE, FAMILIES, MOTORS, PACKS, SKIRTS, SURFACES } from "../truth.ts";
import { BUILDS } from "../truthOfBuilds.ts";
import { DAY, type Id, motorTruth } from "./rig.ts";

/** @returns a build as it really is, at a state of charge, SI */
export function buildTruth(id: string, charge: number): PredictInput {
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
