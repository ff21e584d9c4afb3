import { part } from "../fields.ts";
import type { KindSpec } from "../spec.ts";

/** Height of the lip by the load on the vehicle. */
export const rideHeight: KindSpec = {
  kind: "ride-height",
  name: "Ride-height test",
  row: "reading",
  plate: false,
  fields: [part("gear", "Running gear", "gears")],
  columns: [
    {
      key: "load",
      label: "Load",
      dimension: "load",
      need: "required",
      hint: "put on the vehicle; 0 g: nothing",
      names: ["weight", "weights", "added", "last", "mass"],
    },
    {
      key: "height",
      label: "Height of the lip",
      dimension: "length",
      need: "required",
      hint: "over the surface; 0 where it touches",
      names: ["height", "gap", "h", "lip", "lipheight", "rideheight", "spalt"],
    },
  ],
  instruments: [
    { key: "height", label: "Height", dimension: "length" },
    { key: "load", label: "Load", dimension: "load" },
  ],
};
