import type { BladeShape, Blades, LimitsInput, RotorBody } from "../decide/limits/input.ts";
import type { LimitKey } from "../decide/limits/limit.ts";
import type { Build } from "../model/build.ts";
import { MATERIALS } from "../model/parts/materials.ts";
import type { Motor } from "../model/parts/motor.ts";
import type { Pack } from "../model/parts/pack.ts";
import type { Rotor } from "../model/parts/rotor.ts";
import type { RundownInput } from "../physics/rundown.ts";
import { type Book, findById } from "./book.ts";
import { motorThermal } from "./motorThermal.ts";
import { rotorMass } from "./rotorSize.ts";

/** The blades at the build's diameter: all of one shape, their middle between inlet and rim, at the rim where the inlet isn't known. */
function bladesOf({ material, geometry, sizes }: Rotor, diameter: number): Blades | null {
  if (material?.bladeMass === undefined || material.rimThickness === undefined) return null;
  const scale = diameter / sizes[0].diameter;
  const middle = (1 + (geometry?.inletRatio ?? 1)) / 2;
  return {
    mass: material.bladeMass * scale ** 3,
    rimThickness: material.rimThickness * scale,
    radius: (middle * diameter) / 2,
    count: geometry?.bladeCount ?? null,
  };
}

/** A blade that stands free on its disc, at the build's diameter; null where its height, its thickness or its angle isn't stated. */
function standingOf({ material, geometry, sizes }: Rotor, diameter: number): BladeShape | null {
  if (material?.bladeHeight === undefined || material.bladeThickness === undefined || !geometry) return null;
  const scale = diameter / sizes[0].diameter;
  return {
    height: material.bladeHeight * scale,
    thickness: material.bladeThickness * scale,
    radius: ((1 + geometry.inletRatio) / 4) * diameter,
    angle: geometry.bladeExitAngle,
  };
}

/** @returns the rotor as a turning disc, a usual material's figures where it gives none of its own; null without a material */
export function rotorBody(rotor: Rotor, diameter: number): RotorBody | null {
  const { material } = rotor;
  if (!material) return null;
  const usual = material.preset && MATERIALS[material.preset];
  const density = material.density ?? usual?.density;
  const poisson = material.poissonRatio ?? usual?.poissonRatio;
  const strength = material.strength ?? usual?.strength;
  if (density === undefined || poisson === undefined || strength === undefined) return null;
  const { boreDiameter } = material;
  return {
    density,
    poisson,
    strength,
    boreDiameter,
    blades: bladesOf(rotor, diameter),
    standing: standingOf(rotor, diameter),
  };
}

/** @returns whether a rotor's stress rests on a guess: a usual material's figure, or one that is marked */
export function rotorGuessed({ material, estimated }: Rotor): boolean {
  const usual = material?.preset !== undefined;
  const filled = usual && [material?.density, material?.poissonRatio, material?.strength].includes(undefined);
  return filled || estimated.some((path) => path.startsWith("material."));
}

interface Parts {
  readonly rotor: Rotor | undefined;
  readonly motor: Motor | undefined;
  readonly pack: Pack | undefined;
}

/** Which limits rest on a guess: by the marks of the parts they come from. */
function estimatedOf({ rotor, motor, pack }: Parts): LimitKey[] {
  const marked = (part: { readonly estimated: readonly string[] } | undefined, ...paths: string[]) =>
    part?.estimated.some((path) => paths.includes(path)) ?? false;
  const guesses: Record<LimitKey, boolean> = {
    winding:
      (motor && motorThermal(motor).basis === "estimated") || marked(motor, "windingLimit", "resistance"),
    "motor-voltage": marked(motor, "ratedVoltage"),
    "motor-current": marked(motor, "maxCurrent"),
    "cell-current": marked(pack, "cell.maxCurrent"),
    "cell-voltage": marked(pack, "cell.minimumVoltage", "cell.resistance"),
    "rotor-speed": rotor !== undefined && rotorGuessed(rotor),
  };
  return (Object.keys(guesses) as LimitKey[]).filter((key) => guesses[key]);
}

/**
 * A build's limits as the book holds them.
 *
 * @param book - the whole bench book
 * @param build - a stored build, or one changed by what-if handles
 * @param run - the build's numbers with its cell, at the charge to judge it at
 * @returns input for {@link limitsOf}; what the book does not hold is null
 */
export function limitsInput(book: Book, build: Build, run: RundownInput): LimitsInput {
  const rotor = findById(book.rotors, build.rotor)?.data;
  const motor = findById(book.motors, build.motor)?.data;
  const pack = findById(book.packs, build.pack)?.data;
  return {
    build: run,
    motor: {
      windingLimit: motor?.windingLimit ?? null,
      ratedVoltage: motor?.ratedVoltage ?? null,
      maxCurrent: motor?.maxCurrent ?? null,
    },
    rotor: rotor ? rotorBody(rotor, build.diameter) : null,
    rotorMass: rotor ? rotorMass(rotor, build.diameter) : null,
    fallHeight: build.fallHeight ?? null,
    estimated: estimatedOf({ rotor, motor, pack }),
  };
}
