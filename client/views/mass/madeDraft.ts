import { STUFF_KEYS, type StuffKey } from "../../../shared/model/densities.ts";
import type { LedgerLine } from "../../../shared/model/ledger.ts";
import { BUILD } from "../../../shared/model/limits.ts";
import type { Made } from "../../../shared/model/made.ts";
import type { DimensionName } from "../../../shared/units/dimensions.ts";
import type { NumberSpec } from "../../../shared/units/readNumber.ts";
import { typedText } from "../../../shared/units/shown.ts";

/** How a piece is made, and where it stands, while it is typed. */
export interface MadeDraft {
  /** "": its mass is typed */
  readonly by: "" | Made["by"];
  readonly material: StuffKey;
  readonly volume: string;
  readonly infill: string;
  readonly surface: string;
  readonly wall: string;
  readonly area: string;
  readonly thickness: string;
  readonly fromRear: string;
  readonly height: string;
}

export const NOT_MADE: MadeDraft = {
  by: "",
  material: "pla",
  volume: "",
  infill: "",
  surface: "",
  wall: "",
  area: "",
  thickness: "",
  fromRear: "",
  height: "",
};

const { made, place } = BUILD.ledger;
const length = (limits: NumberSpec["limits"], example: string): NumberSpec => ({
  dimension: "length",
  limits,
  example,
});

export const MADE_SPECS = {
  volume: { dimension: "volume", limits: { positive: true, max: 1 }, example: "42 cm³" },
  infill: { dimension: "fraction", limits: made.infill, example: "20 %" },
  surface: { dimension: "area", limits: made.surface, example: "180 cm²" },
  wall: length(made.wall, "0.8 mm"),
  area: { dimension: "area", limits: made.area, example: "120 cm²" },
  thickness: length(made.thickness, "0.5 mm"),
  fromRear: length(place.fromRear, "55 mm"),
  height: length(place.height, "20 mm"),
} as const satisfies Readonly<Record<string, NumberSpec>>;

export type MadeField = keyof typeof MADE_SPECS;

const typed = (value: number | undefined, name: DimensionName) =>
  value === undefined ? "" : typedText(value, name);

/** @returns how a stored line is made and where it stands, as it would be typed */
export function draftOfMade({ made: drawing, place: at }: Pick<LedgerLine, "made" | "place">): MadeDraft {
  const where = { fromRear: typed(at?.fromRear, "length"), height: typed(at?.height, "length") };
  if (!drawing) return { ...NOT_MADE, ...where };
  const common = { ...NOT_MADE, ...where, by: drawing.by, material: drawing.material };
  if (drawing.by === "sheet")
    return {
      ...common,
      area: typed(drawing.area, "area"),
      thickness: typed(drawing.thickness, "length"),
    };
  return {
    ...common,
    volume: typed(drawing.volume, "volume"),
    infill: typed(drawing.infill, "fraction"),
    surface: typed(drawing.surface, "area"),
    wall: typed(drawing.wall, "length"),
  };
}

export const stuffOf = (text: string): StuffKey => STUFF_KEYS.find((key) => key === text) ?? "pla";

/** Reads one number; undefined where the field is empty or wrong. */
export type ReadField = (field: MadeField, isNeeded: boolean) => number | undefined;

/** @returns how a piece is made as typed; undefined where its mass is typed, or something is missing */
export function readMade({ by, material }: MadeDraft, read: ReadField): Made | undefined {
  if (by === "") return undefined;
  if (by === "sheet") {
    const [area, thickness] = [read("area", true), read("thickness", true)];
    return area === undefined || thickness === undefined ? undefined : { by, material, area, thickness };
  }
  const [volume, infill] = [read("volume", true), read("infill", false)];
  const [surface, wall] = [read("surface", false), read("wall", false)];
  if (volume === undefined) return undefined;
  return {
    by,
    material,
    volume,
    infill: infill ?? 1,
    ...(surface === undefined ? {} : { surface }),
    ...(wall === undefined ? {} : { wall }),
  };
}

/** @returns where a piece stands as typed; undefined where neither number is */
export function readPlace(draft: MadeDraft, read: ReadField): LedgerLine["place"] {
  if (draft.fromRear.trim() === "" && draft.height.trim() === "") return undefined;
  const [fromRear, height] = [read("fromRear", true), read("height", true)];
  return fromRear === undefined || height === undefined ? undefined : { fromRear, height };
}
