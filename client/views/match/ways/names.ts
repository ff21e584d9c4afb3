import type { Way } from "../../../../shared/decide/ways/ways.ts";
import type { DimensionName } from "../../../../shared/units/dimensions.ts";
import type { HandleKey } from "../../../state/handles.ts";

/** How a way's handle is called and shown. */
export interface WayName {
  readonly label: string;
  /** null: a bare number */
  readonly dimension: DimensionName | null;
  /** what follows the number: "a cell" */
  readonly after?: string;
  /** in the quantity's first unit */
  readonly decimals: number;
  /** the what-if handle that sets it; null: none does */
  readonly handle: HandleKey | null;
}

export const WAY_NAMES: Readonly<Record<Way["handle"], WayName>> = {
  diameter: { label: "Rotor", dimension: "length", decimals: 1, handle: "diameter" },
  series: { label: "Cells in series", dimension: null, decimals: 0, handle: "series" },
  cellVoltage: { label: "Voltage", dimension: "voltage", after: "a cell", decimals: 2, handle: "charge" },
  duty: { label: "Throttle", dimension: "fraction", decimals: 0, handle: "duty" },
  gap: { label: "Gap", dimension: "length", decimals: 2, handle: "gap" },
  area: { label: "Skirt area, same shape", dimension: "area", decimals: 1, handle: null },
  mass: { label: "Mass", dimension: "mass", decimals: 0, handle: "mass" },
  wheelFriction: { label: "Wheel friction μ", dimension: null, decimals: 2, handle: "wheelFriction" },
};
