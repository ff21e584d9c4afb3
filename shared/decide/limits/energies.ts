import { fallingEnergy, fallingSpeed, fragmentEnergy, rotorEnergy } from "../../physics/limits/energy.ts";
import type { LimitsInput } from "./input.ts";
import type { CautionKey } from "./limit.ts";
import type { RotorFigures } from "./rotor.ts";

export type EnergyKey = "rotor" | "blade" | "tenth" | "fall";

/** An energy that would be let go, and how fast it would come. */
export interface Energy {
  readonly key: EnergyKey;
  /** [J]; null where it isn't known */
  readonly energy: number | null;
  /** of the piece or the vehicle [m/s] */
  readonly speed: number | null;
  readonly missing: string | null;
  readonly caution: CautionKey;
}

/** Where no blade's mass is known: a piece of the rim with this share of the rotor's mass. A choice, no source. */
const PIECE = 0.1;

function wholeRotor({ rotorMass, rotor, build }: LimitsInput, { speed, tipSpeed }: RotorFigures): Energy {
  const of = { key: "rotor", speed: tipSpeed, caution: "rotor" } as const;
  if (rotorMass === null)
    return { ...of, energy: null, missing: "The rotor's mass: weigh it, on the rotor's page." };
  const [outerRadius, boreRadius] = [build.rotor.diameter / 2, (rotor?.boreDiameter ?? 0) / 2];
  return { ...of, energy: rotorEnergy({ mass: rotorMass, outerRadius, boreRadius }, speed), missing: null };
}

function piece({ rotorMass, rotor, build }: LimitsInput, { speed, tipSpeed }: RotorFigures): Energy {
  const blades = rotor?.blades;
  const one = { caution: "rotor", missing: null } as const;
  if (blades?.count) {
    const energy = fragmentEnergy(blades.mass / blades.count, blades.radius, speed);
    return { ...one, key: "blade", energy, speed: speed * blades.radius };
  }
  const missing = "The mass of the blades, or of the rotor, on the rotor's page.";
  if (rotorMass === null) return { key: "tenth", energy: null, speed: tipSpeed, missing, caution: "rotor" };
  const energy = fragmentEnergy(PIECE * rotorMass, build.rotor.diameter / 2, speed);
  return { ...one, key: "tenth", energy, speed: tipSpeed };
}

function fall({ build, fallHeight }: LimitsInput): Energy {
  const of = { key: "fall", caution: "fall" } as const;
  if (fallHeight === null)
    return { ...of, energy: null, speed: null, missing: "How high it works above the ground, in the build." };
  return {
    ...of,
    energy: fallingEnergy(build.vehicle.mass, fallHeight),
    speed: fallingSpeed(fallHeight),
    missing: null,
  };
}

/**
 * The energies that a failure lets go.
 *
 *     rotor ½Jω²;  a blade, or a tenth of the rotor at its rim, ½m(ωr)²;  the vehicle m·g·h
 *
 * @param input - masses [kg], rotor [m], height of the fall [m]
 * @param figures - from {@link rotorFigures} [rad/s, m/s]
 * @returns energies [J] and speeds [m/s], null where a mass or height isn't known
 * @throws {OutOfRangeError} on a mass or a height that can't be
 *
 * Valid without the drag of the air. Source: docs/method/limits.md
 */
export function energiesOf(input: LimitsInput, figures: RotorFigures): Energy[] {
  return [wholeRotor(input, figures), piece(input, figures), fall(input)];
}
