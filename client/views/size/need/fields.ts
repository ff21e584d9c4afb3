import type { NeedNumbers, PartKey } from "../../../../shared/book/size/need/typedNeed.ts";
import { BUILD, MOTOR, PACK, SKIRT, SURFACE } from "../../../../shared/model/limits.ts";
import type { NumberSpec } from "../../../../shared/units/readNumber.ts";

/** One number of a need, as it is typed and as the address carries it. */
export interface NeedField {
  readonly key: keyof NeedNumbers;
  readonly label: string;
  readonly spec: NumberSpec;
  /** what stands there until it is typed [SI]: a small vehicle on glass, invented */
  readonly usual: number;
}

const quantity = (key: keyof NeedNumbers, label: string, usual: number, spec: NumberSpec): NeedField => ({
  key,
  label,
  usual,
  spec,
});

const { vehicle } = BUILD;

/** Of the vehicle itself. */
export const MASS_FIELD = quantity("mass", "Mass, everything on board", 0.18, {
  dimension: "mass",
  limits: vehicle.mass,
  example: "180 g",
});

/** Where its weight acts; a build's own usual ones until typed. */
export const BALANCE_FIELDS: readonly NeedField[] = [
  quantity("wheelbase", "Between the axles", 0.11, {
    dimension: "length",
    limits: vehicle.wheelbase,
    example: "110 mm",
  }),
  quantity("track", "Between left and right wheels", 0.09, {
    dimension: "length",
    limits: vehicle.track,
    example: "90 mm",
  }),
  quantity("cgHeight", "Height of the centre of gravity", 0.02, {
    dimension: "length",
    limits: vehicle.cgHeight,
    example: "20 mm",
  }),
];

/** Of each part that is typed and not taken from the book. */
export const PART_FIELDS: Readonly<Record<PartKey, readonly NeedField[]>> = {
  surface: [
    quantity("wheelFriction", "Friction of the wheels", 0.7, {
      dimension: null,
      limits: SURFACE.wheelFriction,
      example: "0.7",
    }),
    quantity("roughness", "Roughness", 0.00001, {
      dimension: "length",
      limits: SURFACE.roughness,
      example: "0.01 mm",
    }),
  ],
  skirt: [
    quantity("perimeter", "Length of the lip", 0.36, {
      dimension: "length",
      limits: SKIRT.perimeter,
      example: "360 mm",
    }),
    quantity("area", "Area inside", 0.0085, { dimension: "area", limits: SKIRT.area, example: "85 cm²" }),
    quantity("gap", "Gap", 0.0005, { dimension: "length", limits: SKIRT.gap, example: "0.5 mm" }),
    quantity("land", "Lip width", 0.003, { dimension: "length", limits: SKIRT.land, example: "3 mm" }),
    quantity("skirtFriction", "Friction of the skirt", 0.3, {
      dimension: null,
      limits: SKIRT.friction,
      example: "0.3",
    }),
  ],
  pack: [
    quantity("series", "Lithium-ion cells in series", 2, {
      dimension: null,
      limits: PACK.series,
      example: "2",
    }),
    quantity("capacity", "Capacity", 1620, {
      dimension: "charge",
      limits: PACK.cell.capacity,
      example: "450 mAh",
    }),
    quantity("cellResistance", "Resistance of a cell", 0.025, {
      dimension: "smallResistance",
      limits: PACK.cell.resistance,
      example: "25 mΩ",
    }),
    quantity("wireResistance", "Resistance of the wires", 0.015, {
      dimension: "smallResistance",
      limits: PACK.wireResistance,
      example: "15 mΩ",
    }),
    quantity("minimumVoltage", "Minimum of a loaded cell", 3, {
      dimension: "voltage",
      limits: PACK.cell.minimumVoltage,
      example: "3.0 V",
    }),
  ],
  motor: [
    quantity("kv", "Its speed constant", 5000, { dimension: "kv", limits: MOTOR.kv, example: "5000 rpm/V" }),
    quantity("resistance", "Its resistance", 0.2, {
      dimension: "resistance",
      limits: MOTOR.resistance,
      example: "0.2 Ω",
    }),
    quantity("noLoadCurrent", "Its no-load current", 0.5, {
      dimension: "current",
      limits: MOTOR.noLoadCurrent,
      example: "0.5 A",
    }),
    quantity("thermalResistance", "Winding to air, K/W", 10, {
      dimension: null,
      limits: MOTOR.thermalResistance,
      example: "10",
    }),
  ],
};

export const NEED_FIELDS: readonly NeedField[] = [
  MASS_FIELD,
  ...BALANCE_FIELDS,
  ...Object.values(PART_FIELDS).flat(),
];
