import { part } from "../fields.ts";
import { NAMES } from "../headerNames.ts";
import type { KindSpec } from "../spec.ts";

/** What a build did on a real drive. */
export const runLog: KindSpec = {
  kind: "run-log",
  name: "Run log",
  row: "attitude",
  plate: false,
  fields: [part("build", "Build", "builds")],
  columns: [
    {
      key: "outcome",
      label: "It",
      inList: "outcome",
      dimension: null,
      need: "required",
      options: [
        ["held", "held"],
        ["slid", "slid"],
        ["fell", "fell"],
        ["stalled", "stalled"],
      ],
      names: ["outcome", "result", "what"],
    },
    {
      key: "angle",
      label: "Inclination",
      dimension: "angle",
      need: "required",
      hint: "0° floor, 90° wall, 180° ceiling",
      names: ["angle", "attitude", "surface", "inclination", "neigung"],
    },
    { key: "driving", label: "Driving", dimension: null, need: "check", hint: "else it stood" },
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
      key: "charge",
      label: "Charge",
      dimension: "fraction",
      need: "optional",
      offered: true,
      hint: "where no voltage is read",
    },
    {
      key: "time",
      label: "Time",
      dimension: "duration",
      need: "optional",
      offered: true,
      hint: "since switched on, pack full",
      names: ["t", "minutes", "min", "zeit"],
    },
  ],
  instruments: [],
};
