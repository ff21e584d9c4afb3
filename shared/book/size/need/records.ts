import type { Motor } from "../../../model/parts/motor.ts";
import type { Pack } from "../../../model/parts/pack.ts";
import type { Rotor } from "../../../model/parts/rotor.ts";
import type { Skirt } from "../../../model/parts/skirt.ts";
import type { Surface } from "../../../model/parts/surface.ts";
import { typedText } from "../../../units/shown.ts";
import type { DrawnRotor, TypedNeed } from "./typedNeed.ts";

const figure = (value: number, digits = 3): string => String(Number(value.toPrecision(digits)));
const typed = { estimated: [], uncertainty: {}, note: "Typed in Size." };

/** @returns the skirt that a need types [SI] */
export function typedSkirt({ numbers, edge }: TypedNeed): Skirt {
  const { perimeter, area, land, gap, skirtFriction: friction } = numbers;
  return {
    ...typed,
    name: `Skirt, ${typedText(perimeter, "length", 3)} round, ${typedText(gap, "length", 3)} gap`,
    perimeter,
    area,
    land,
    gap,
    friction,
    edge,
    gapBasis: "set",
    openings: [],
    holes: [],
    honeycombs: [],
    share: 0,
  };
}

/** @returns the surface that a need types [SI] */
export function typedSurface({ numbers: { roughness, wheelFriction } }: TypedNeed): Surface {
  return {
    ...typed,
    name: `Surface, friction ${figure(wheelFriction)}`,
    roughness,
    wheelFriction,
    joints: [],
  };
}

/** @returns the pack that a need types: lithium-ion cells, whose published curve stands until a discharge test [SI] */
export function typedPack({ numbers }: TypedNeed): Pack {
  const { series, capacity, minimumVoltage, cellResistance: resistance, wireResistance } = numbers;
  const cell = { capacity, minimumVoltage, resistance, chemistry: "lithium-ion" } as const;
  const cells = `${series} ${series === 1 ? "cell" : "cells"}`;
  return { ...typed, name: `Pack, ${cells}`, series, parallel: 1, wireResistance, cell };
}

/** @returns the motor that a need types [SI, kv in rpm/V] */
export function typedMotor({ numbers }: TypedNeed): Motor {
  const { kv, resistance, noLoadCurrent, thermalResistance } = numbers;
  const estimated = ["thermalResistance"];
  return {
    ...typed,
    name: `Motor, ${typedText(kv, "kv", 4)}`,
    kv,
    resistance,
    noLoadCurrent,
    thermalResistance,
    viscousTorque: 0,
    estimated,
  };
}

/** @returns the family that a drawing gives: its curve is estimated until a curve test [m] */
export function drawnFamily(
  { blades, exitAngle, inletRatio, widthRatio }: DrawnRotor,
  diameter: number,
): Rotor {
  return {
    ...typed,
    name: `Drawn: ${blades} blades at ${figure(exitAngle)}°, ${figure(widthRatio * 100, 2)} % wide`,
    kind: "ducted",
    form: "centrifugal",
    sizes: [{ diameter }],
    geometry: { bladeCount: blades, bladeExitAngle: exitAngle, inletRatio, widthRatio },
    material: { preset: "pla", boreDiameter: 0.0015 },
  };
}
