import { part } from "../fields.ts";
import type { KindSpec } from "../spec.ts";

/** Tilts that held and at which it slid. */
export const friction: KindSpec = {
  kind: "friction",
  name: "Friction test",
  row: "slide",
  plate: false,
  fields: [
    part("surface", "Surface", "surfaces"),
    {
      type: "choice",
      key: "contact",
      label: "What slid",
      options: [
        ["wheels", "the vehicle on its wheels"],
        ["skirt", "a piece of skirt"],
      ],
    },
    part("skirt", "Skirt", "skirts", false, "where it was a skirt that slid"),
  ],
  columns: [
    {
      key: "held",
      label: "Held",
      dimension: "angle",
      need: "nullable",
      hint: "steepest tilt that held",
      names: ["holds", "hold", "hielt"],
    },
    {
      key: "slid",
      label: "Slid",
      dimension: "angle",
      need: "nullable",
      hint: "empty if you stopped before",
      names: ["slides", "slide", "slipped", "slip", "rutschte"],
    },
  ],
  instruments: [{ key: "angle", label: "Angle", dimension: "angle" }],
};
