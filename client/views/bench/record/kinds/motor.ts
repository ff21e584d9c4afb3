import { asked, part } from "../fields.ts";
import { NAMES } from "../headerNames.ts";
import type { KindSpec } from "../spec.ts";

/** Voltage, current and speed of a motor. */
export const motor: KindSpec = {
  kind: "motor",
  name: "Motor test",
  row: "run",
  plate: false,
  fields: [
    part("motor", "Motor", "motors"),
    asked("resistance", "Resistance", "resistance", false, "ohmmeter, leads taken off"),
  ],
  columns: [
    { key: "voltage", label: "Voltage", dimension: "voltage", need: "required", names: NAMES.voltage },
    { key: "current", label: "Current", dimension: "current", need: "required", names: NAMES.current },
    {
      key: "speed",
      label: "Speed",
      dimension: "speed",
      need: "required",
      hint: "0 = blocked",
      names: NAMES.speed,
    },
    {
      key: "noLoad",
      label: "No load",
      dimension: null,
      need: "check",
      names: ["idle", "free", "unloaded", "leerlauf"],
    },
    {
      key: "throttle",
      label: "Throttle",
      dimension: "fraction",
      need: "optional",
      carried: true,
      names: NAMES.throttle,
      fallback: "100 %",
    },
  ],
  instruments: [
    { key: "voltage", label: "Voltage", dimension: "voltage" },
    { key: "current", label: "Current", dimension: "current" },
    { key: "speed", label: "Speed", dimension: "speed" },
  ],
};
