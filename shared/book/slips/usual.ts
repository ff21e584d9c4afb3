import type { CollectionName } from "../../model/collections.ts";
import type { DimensionName } from "../../units/dimensions.ts";
import { between, type Slip, slipOf, UNIT } from "./slip.ts";

/** What a number of a part or a test usually is, by its quantity; null: a bare number. */
export interface Usual {
  readonly path: string;
  readonly name: DimensionName | null;
  readonly low: number;
  readonly high: number;
}

const usual = (path: string, name: DimensionName | null, low: number, high: number): Usual => ({
  path,
  name,
  low,
  high,
});

/** What an instrument can read, and how well, differs by orders of magnitude: nothing of it is unusual. */
type Collection = Exclude<CollectionName, "tests" | "instruments">;

/** Of vehicles from a matchbox to a suitcase. Common practice, no source. */
export const USUAL_IN_PARTS: Readonly<Partial<Record<Collection, readonly Usual[]>>> = {
  rotors: [
    usual("sizes.*.diameter", "length", 8e-3, 0.25),
    usual("sizes.*.mass", "mass", 1e-4, 0.5),
    usual("sizes.*.height", "length", 1e-3, 0.1),
    usual("sizes.*.tipClearance", "length", 2e-5, 5e-3),
    usual("material.boreDiameter", "length", 5e-4, 0.02),
    usual("material.strength", "stress", 3e6, 2e9),
    usual("material.density", "density", 200, 9000),
    usual("material.bladeMass", "mass", 2e-5, 0.3),
    usual("material.rimThickness", "length", 2e-4, 0.02),
    usual("chord", "length", 1e-3, 0.06),
  ],
  motors: [
    usual("kv", "kv", 100, 60_000),
    usual("resistance", "resistance", 3e-3, 60),
    usual("noLoadCurrent", "current", 5e-3, 10),
    usual("mass", "mass", 5e-4, 1),
    usual("ratedVoltage", "voltage", 1, 100),
    usual("maxCurrent", "current", 0.05, 200),
    usual("thermalResistance", "thermalResistance", 0.5, 300),
    usual("thermalTimeConstant", "time", 2, 3600),
    usual("windingLimit", "temperature", 323.15, 523.15),
    usual("diameter", "length", 3e-3, 0.1),
    usual("length", "length", 3e-3, 0.15),
  ],
  packs: [
    usual("wireResistance", "resistance", 1e-3, 1),
    usual("mass", "mass", 5e-4, 5),
    usual("height", "length", 2e-3, 0.1),
    usual("cell.capacity", "charge", 72, 180_000),
    usual("cell.resistance", "resistance", 3e-4, 2),
    usual("cell.minimumVoltage", "voltage", 0.8, 3.8),
    usual("cell.maxCurrent", "current", 0.05, 500),
  ],
  skirts: [
    usual("perimeter", "length", 0.03, 4),
    usual("area", "area", 5e-5, 1),
    usual("land", "length", 2e-4, 0.05),
    usual("gap", "length", 2e-5, 8e-3),
    usual("openings.*.area", "area", 5e-8, 3e-3),
    usual("friction", null, 0.05, 2),
    usual("height", "length", 5e-4, 0.1),
    usual("mass", "mass", 1e-4, 2),
  ],
  plates: [usual("thickness", "length", 2e-4, 0.02), usual("holes.*.diameter", "length", 5e-4, 0.05)],
  surfaces: [
    usual("roughness", "length", 1e-7, 3e-3),
    usual("wheelFriction", null, 0.05, 2),
    usual("skirtFriction", null, 0.05, 2),
  ],
  builds: [
    usual("diameter", "length", 8e-3, 0.25),
    usual("charge", "fraction", 0.02, 1),
    usual("supply.duty", "fraction", 0.05, 1),
    usual("supply.driverResistance", "resistance", 2e-4, 1),
    usual("supply.auxCurrent", "current", 1e-3, 20),
    usual("vehicle.mass", "mass", 0.01, 20),
    usual("vehicle.wheelbase", "length", 0.015, 1.5),
    usual("vehicle.track", "length", 0.015, 1.5),
    usual("vehicle.cgHeight", "length", 1e-3, 0.5),
    usual("vehicle.jetArea", "area", 1e-6, 0.05),
    usual("vehicle.verticalStiffness", "stiffness", 100, 1e6),
    usual("vehicle.gapLoad", "load", 0.1, 200),
    usual("fallHeight", "length", 0.1, 100),
    usual("overrides.gap", "length", 2e-5, 8e-3),
    usual("overrides.wheelFriction", null, 0.05, 2),
  ],
};

interface Found {
  readonly path: string;
  readonly value: number;
}

/** Every number at a path; a star stands for each place of a list. */
function numbersAt(data: unknown, keys: readonly string[], before: readonly string[] = []): Found[] {
  const [key, ...rest] = keys;
  if (key === undefined) return typeof data === "number" ? [{ path: before.join("."), value: data }] : [];
  if (typeof data !== "object" || data === null) return [];
  const within = data as Readonly<Record<string, unknown>>;
  const places = key === "*" ? Object.keys(within) : [key];
  return places.flatMap((place) => numbersAt(within[place], rest, [...before, place]));
}

/** @returns the number as a slip where it is unusual */
export function unusual(path: string, value: number, { name, low, high }: Omit<Usual, "path">): Slip[] {
  const question = name === null ? "Is it right?" : UNIT;
  return slipOf({
    path,
    value,
    low,
    high,
    slack: 1,
    said: `usually ${between(low, high, name)}. ${question}`,
  });
}

/** @returns the unusual numbers of a part or a build, SI */
export function unusualIn(collection: Collection, data: object): Slip[] {
  return (USUAL_IN_PARTS[collection] ?? []).flatMap((each) =>
    numbersAt(data, each.path.split(".")).flatMap(({ path, value }) => unusual(path, value, each)),
  );
}
