import type { Build } from "../../model/build.ts";
import type { PullTest } from "../../model/tests/pull.ts";
import { commandFromDuty } from "../../physics/motor.ts";
import { predict } from "../../physics/predict.ts";
import { findById } from "../book.ts";
import { offsetInUse } from "../throttle.ts";
import { type Asked, type Planned, plannedHead, scatter, withTest } from "./planned.ts";

const PULLS = 6;
/** What single pulls scatter by, as a calibration takes it unless its tests say otherwise [-]. Judgement. */
const SCATTER = 0.05;
/** Half of a bracket, of the load [-]. Judgement. */
const HALF_BRACKET = 0.02;

const newtons = (value: number) => ({ value, unit: "N" });

/** The throttle is set as a command. */
function partsOf({ rotor, motor, pack, diameter, charge, supply }: Build, offset: number) {
  return {
    rotor,
    motor,
    pack,
    diameter: { value: diameter, unit: "m" },
    charge: { value: charge * 100, unit: "%" },
    duty: { value: commandFromDuty(supply.duty, offset) * 100, unit: "%" },
  };
}

/** @returns pulls with the build's own fan, at the load that it is now thought to hold; null where it pulls nothing */
export function plannedPull(
  { book, build, resolved }: Asked,
  direction: "straight-off" | "along",
): Planned | null {
  const skirt = build.skirt && findById(book.skirts, build.skirt);
  const surface = findById(book.surfaces, build.surface);
  if (!resolved.input || !skirt || !surface || !(build.supply.duty > 0)) return null;
  // The rig stands on a pack of its own: nothing but the fan draws from it.
  const supply = { duty: build.supply.duty, driverResistance: 0, auxCurrent: 0 };
  const { suction } = predict({ ...resolved.input, supply }, []);
  const { wheelFriction, skirtFriction, skirtShare } = resolved.input.vehicle;
  const grip = wheelFriction * (1 - skirtShare) + skirtFriction * skirtShare;
  const load = direction === "along" ? grip * suction : suction;
  if (!(load > 0)) return null;
  const test: PullTest = {
    kind: "pull",
    ...plannedHead,
    ...partsOf(build, offsetInUse(resolved.motor?.throttle)),
    skirt: skirt.id,
    surface: surface.id,
    direction,
    rigMass: { value: 0, unit: "g" },
    instruments: {},
    rows: scatter(PULLS).map((z) => {
      const lets = load * (1 + SCATTER * z);
      return { held: newtons(lets * (1 - HALF_BRACKET)), letGo: newtons(lets * (1 + HALF_BRACKET)) };
    }),
  };
  const way = direction === "along" ? "along the surface" : "straight off";
  return {
    key: `pull-${direction}`,
    kind: "pull",
    title: `Six pulls ${way}, ${skirt.data.name} on ${surface.data.name}`,
    takes: "this fan and skirt, loads or a hand scale, the pack's voltage read at each pull; 10 minutes",
    book: withTest(book, `pull-${direction}`, test),
    build,
  };
}
