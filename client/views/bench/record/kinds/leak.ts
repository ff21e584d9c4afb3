import { asked, FLOW_FROM, flowColumn, part } from "../fields.ts";
import { NAMES } from "../headerNames.ts";
import type { KindSpec } from "../spec.ts";

/** Flow through a skirt on a surface against its suction. */
export const leak: KindSpec = {
  kind: "leak",
  name: "Leak test",
  row: "point",
  plate: true,
  fields: [
    part("skirt", "Skirt", "skirts"),
    part("surface", "Surface", "surfaces"),
    asked("gap", "Shim", "length", false, "in the place of the skirt's set gap"),
    FLOW_FROM,
  ],
  columns: [
    {
      key: "pressure",
      label: "Suction",
      dimension: "pressure",
      need: "required",
      names: NAMES.pressure,
    },
    flowColumn,
    {
      key: "platePressure",
      label: "Drop over the plate",
      dimension: "pressure",
      need: "required",
      names: ["plate", "pplate", "dpplate", "platedrop", "pressureplate", "dropoverplate", "overplate"],
      flowFrom: "bleed-plate",
    },
  ],
  instruments: [
    { key: "pressure", label: "Pressure", dimension: "pressure" },
    { key: "flow", label: "Flow", dimension: "flow" },
  ],
};
