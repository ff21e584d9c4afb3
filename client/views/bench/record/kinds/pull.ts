import { asked, part } from "../fields.ts";
import { NAMES } from "../headerNames.ts";
import type { KindSpec } from "../spec.ts";

/** Loads that held and that let go. */
export const pull: KindSpec = {
  kind: "pull",
  name: "Pull test",
  row: "pull",
  plate: false,
  fields: [
    part("rotor", "Rotor", "rotors"),
    asked("diameter", "Rotor diameter", "length"),
    part("motor", "Motor", "motors"),
    part("pack", "Pack", "packs"),
    part("skirt", "Skirt", "skirts"),
    part("surface", "Surface", "surfaces"),
    {
      type: "choice",
      key: "direction",
      label: "Pulled",
      options: [
        ["straight-off", "straight off the surface"],
        ["along", "along the surface"],
        ["ceiling", "hung from the ceiling"],
      ],
    },
    asked("rigMass", "Rig mass", "mass", true, "what hangs on the skirt besides the load"),
    asked("duty", "Throttle", "fraction"),
    asked("charge", "State of charge", "fraction", false, "where no voltage is read"),
  ],
  columns: [
    {
      key: "held",
      label: "Held",
      dimension: "load",
      need: "required",
      hint: "0 if it let go at once",
      names: ["holds", "hold", "hielt"],
    },
    {
      key: "letGo",
      label: "Let go",
      dimension: "load",
      need: "nullable",
      names: ["letsgo", "released", "release", "failed", "off"],
      hint: "empty if you stopped before",
    },
    {
      key: "voltage",
      label: "Voltage",
      dimension: "voltage",
      need: "optional",
      offered: true,
      hint: "at the pack, under load",
      names: NAMES.voltage,
    },
    {
      key: "gap",
      label: "Shim",
      dimension: "length",
      need: "optional",
      names: ["spacer"],
      carried: true,
      hint: "in the place of the set gap",
    },
  ],
  instruments: [
    { key: "load", label: "Load", dimension: "load" },
    { key: "voltage", label: "Voltage", dimension: "voltage" },
  ],
};
