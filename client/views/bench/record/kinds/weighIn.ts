import { WEIGHED_PARTS } from "../../../../../shared/model/tests/weighIn.ts";
import { asked, part } from "../fields.ts";
import type { KindSpec } from "../spec.ts";

/** What is said of parts alone. */
const OF_PARTS: ReadonlySet<string> = new Set([...WEIGHED_PARTS, "diameter", "what"]);

/** What a part, several together, or a whole build weigh. */
export const weighIn: KindSpec = {
  kind: "weigh-in",
  name: "Weigh-in",
  row: "reading",
  plate: false,
  fields: [
    {
      type: "choice",
      key: "weighed",
      label: "On the scale",
      options: [
        ["build", "a whole build"],
        ["part", "one part"],
        ["assembly", "several parts together"],
      ],
    },
    part("build", "Build", "builds", false, "everything on board, pack included"),
    part("rotor", "Rotor", "rotors", false),
    asked("diameter", "Rotor diameter", "length", false),
    part("motor", "Motor", "motors", false),
    part("pack", "Pack", "packs", false),
    part("skirt", "Skirt", "skirts", false),
    part("gear", "Running gear", "gears", false),
    { type: "text", key: "what", label: "Also on the scale", hint: "what has no entry of its own" },
  ],
  columns: [
    {
      key: "reading",
      label: "Reading",
      dimension: "load",
      need: "required",
      hint: "tare taken off",
      names: ["mass", "weight", "scale", "gewicht", "masse"],
    },
  ],
  applies: (key, { weighed, rotor }) => {
    if (key === "build") return weighed === "build";
    if (key === "diameter" && !rotor) return false;
    return weighed !== "build" || !OF_PARTS.has(key);
  },
  instruments: [{ key: "load", label: "Scale", dimension: "load" }],
};
