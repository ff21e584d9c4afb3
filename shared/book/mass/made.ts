import { DENSITIES, type StuffKey } from "../../model/densities.ts";
import type { Made } from "../../model/made.ts";

/** A mass with its standard uncertainty [kg]. */
interface MadeMass {
  readonly mass: number;
  readonly uncertainty: number;
}

/** Of a print's volume and infill, of a sheet's area and thickness: what the figures of a drawing miss of the piece [-]. Common practice. */
const DRAWN = 0.05;

const densityOf = (material: StuffKey, own: number | undefined) => own ?? DENSITIES[material].density;
const spreadOf = (material: StuffKey, own: number | undefined) =>
  own === undefined ? DENSITIES[material].spread : 0;

/** Walls are solid, the rest as full as the infill says [m³]. */
function solidVolume({ volume, infill, surface, wall }: Extract<Made, { by: "volume" }>): number {
  const shell = surface !== undefined && wall !== undefined ? Math.min(volume, surface * wall) : 0;
  return shell + infill * (volume - shell);
}

/**
 * What a piece weighs by its drawing.
 *
 *     m = ρ·[V_s + i·(V − V_s)], V_s = min(V, A·t);  of a sheet m = ρ·A·t
 *
 * @param made - volume [m³], infill [-], surface [m²] and wall [m] of a print; area [m²] and thickness [m] of a sheet; its material or a density of its own [kg/m³]
 * @returns mass and standard uncertainty of one piece [kg]
 *
 * Valid for pieces of one material. Source: definition; densities by their own sources in shared/model/densities.ts; docs/method/mass.md, Ledger
 */
export function madeMass(made: Made): MadeMass {
  const size = made.by === "volume" ? solidVolume(made) : made.area * made.thickness;
  const mass = densityOf(made.material, made.density) * size;
  return { mass, uncertainty: mass * Math.hypot(DRAWN, spreadOf(made.material, made.density)) };
}

/** @returns whether a piece comes from a printer */
export const isPrinted = (made: Made | undefined): boolean =>
  made !== undefined && made.by === "volume" && DENSITIES[made.material].isPrinted;
