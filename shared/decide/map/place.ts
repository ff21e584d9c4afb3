import { cellAt } from "../../physics/cells/cell.ts";
import type { TestedAt } from "../../physics/point/sizeLaw.ts";
import type { PredictInput } from "../../physics/predict.ts";
import { type AnyPredictInput, isPropeller } from "../../physics/predictAny.ts";
import type { PropellerPredictInput } from "../../physics/propeller.ts";
import type { CellInput } from "../../physics/rundown.ts";
import type { WantedAttitude } from "../choose/problem.ts";

/** Settings that a map's axes may be. */
export const MAP_KEYS = [
  "diameter",
  "kv",
  "series",
  "gap",
  "mass",
  "duty",
  "charge",
  "wheelFriction",
] as const;
export type MapKey = (typeof MAP_KEYS)[number];

/** @returns the settings that move a build: a propeller has no gap */
export function keysOf({ input }: Pick<MapBuild, "input">): MapKey[] {
  return MAP_KEYS.filter((key) => key !== "gap" || !isPropeller(input));
}

/** Values of some settings: m, rpm/V, cells, m, kg, δ, z, μ. */
export type Place = Readonly<Partial<Record<MapKey, number>>>;

/** What a rotor is at one diameter of a map. */
export interface MapRotor {
  /** D [m] */
  readonly diameter: number;
  /** null of a propeller, whose Reynolds number drifts by itself */
  readonly sizeCorrection: TestedAt | null;
  /** ω at which it bursts [rad/s]; null: not known */
  readonly burstSpeed: number | null;
}

/** A build as a map moves it; plain data, fit for other threads. */
export interface MapBuild {
  readonly input: AnyPredictInput;
  readonly cell: CellInput;
  /** z [-] */
  readonly charge: number;
  /** at each diameter that is asked for, the build's own among them */
  readonly rotors: readonly MapRotor[];
  readonly attitudes: readonly WantedAttitude[];
  /** margin wanted [-] */
  readonly target: number;
  /** of the winding [K] */
  readonly windingLimit: number;
}

/** @returns what its rotor is at a diameter [m]; the nearest that was prepared */
export function rotorAt({ rotors }: Pick<MapBuild, "rotors">, diameter: number): MapRotor {
  let best = rotors[0];
  for (const each of rotors) {
    if (each.diameter === diameter) return each;
    if (Math.abs(each.diameter - diameter) < Math.abs(best.diameter - diameter)) best = each;
  }
  return best;
}

/** @returns a motor of the same frame wound for another K_v [rpm/V]: k_t ∝ 1/K_v, R ∝ 1/K_v², the motor constant kept */
export function wound({ motor }: AnyPredictInput, kv: number): PredictInput["motor"] {
  return kv === motor.kv ? motor : { ...motor, kv, resistance: motor.resistance * (motor.kv / kv) ** 2 };
}

/**
 * A build moved to a place of a map.
 *
 *     diameter by the fan laws;  K_v: k_t ∝ 1/K_v, R ∝ 1/K_v²;  gap: the lip's law away from a measured leak;  charge: V_oc(z), R_cell(z)
 *
 * @param of - the build as it stands, SI
 * @param place - values of the settings that move [m, rpm/V, -, kg]
 * @returns the build there, as a prediction takes it, SI
 * @throws {OutOfRangeError} on a charge outside the cell's curve
 *
 * Valid for windings of one frame with the same copper; masses of other parts stay as they are. Source: docs/method/map.md
 */
export function buildAt(of: MapBuild, place: Place): AnyPredictInput {
  const { input } = of;
  return isPropeller(input) ? openAt(of, input, place) : ductedAt(of, input, place);
}

/** @returns a rotor in a duct at another diameter [m], its curve corrected from the nearest one tested */
export function ductedRotorAt(of: MapBuild, rotor: PredictInput["rotor"], diameter: number) {
  if (diameter === rotor.diameter) return rotor;
  return { ...rotor, diameter, sizeCorrection: rotorAt(of, diameter).sizeCorrection };
}

/** @returns a build with a rotor in a duct, as {@link buildAt} @throws as there */
export function ductedAt(of: MapBuild, input: PredictInput, place: Place): PredictInput {
  const { rotor, skirt } = input;
  const { diameter = rotor.diameter, gap = skirt.gap } = place;
  return {
    ...commonAt(of, input, place),
    rotor: ductedRotorAt(of, rotor, diameter),
    skirt: gap === skirt.gap ? skirt : { ...skirt, gap, measuredLeak: null },
  };
}

/** A build with an open propeller, its blades of one shape. */
function openAt(of: MapBuild, input: PropellerPredictInput, place: Place): PropellerPredictInput {
  const { rotor } = input;
  const { diameter = rotor.diameter } = place;
  const chord = (rotor.chord * diameter) / rotor.diameter;
  return { ...commonAt(of, input, place), rotor: { ...rotor, diameter, chord } };
}

/** What moves alike with a rotor of either kind. */
function commonAt({ cell, charge }: MapBuild, input: AnyPredictInput, place: Place) {
  const { air, vehicle, pack, supply } = input;
  const { voltage, resistance } = cellAt(cell, place.charge ?? charge);
  return {
    air,
    motor: wound(input, place.kv ?? input.motor.kv),
    supply: { ...supply, duty: place.duty ?? supply.duty },
    pack: {
      ...pack,
      series: place.series ?? pack.series,
      openCircuitVoltage: voltage,
      cellResistance: resistance,
    },
    vehicle: {
      ...vehicle,
      mass: place.mass ?? vehicle.mass,
      wheelFriction: place.wheelFriction ?? vehicle.wheelFriction,
    },
  };
}

/** @returns the build itself standing at a place, so that a map may be drawn about it */
export function movedTo(of: MapBuild, place: Place): MapBuild {
  return { ...of, input: buildAt(of, place), charge: place.charge ?? of.charge };
}
