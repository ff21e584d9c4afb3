import { asked, part, rotorPart } from "../fields.ts";
import { NAMES } from "../headerNames.ts";
import type { KindSpec } from "../spec.ts";

/** Thrust of an open propeller against its speed. */
export const thrust: KindSpec = {
  kind: "thrust",
  name: "Thrust test",
  row: "reading",
  plate: false,
  fields: [
    rotorPart("Propeller", "propeller"),
    asked("diameter", "Propeller diameter", "length"),
    part("motor", "Motor that turned it", "motors", false, "gives the shaft power from its current"),
  ],
  columns: [
    {
      key: "speed",
      label: "Speed",
      dimension: "speed",
      need: "required",
      names: NAMES.speed,
    },
    {
      key: "thrust",
      label: "Thrust",
      dimension: "load",
      need: "required",
      hint: "towards the surface",
      names: ["force", "schub"],
    },
    {
      key: "current",
      label: "Current",
      dimension: "current",
      need: "optional",
      hint: "at full throttle",
      names: NAMES.current,
    },
    { key: "torque", label: "Torque", dimension: "torque", need: "optional", names: NAMES.torque },
    { key: "voltage", label: "Voltage", dimension: "voltage", need: "optional", names: NAMES.voltage },
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
    { key: "thrust", label: "Thrust", dimension: "load" },
    { key: "speed", label: "Speed", dimension: "speed" },
    { key: "torque", label: "Torque", dimension: "torque" },
    { key: "current", label: "Current", dimension: "current" },
  ],
};
