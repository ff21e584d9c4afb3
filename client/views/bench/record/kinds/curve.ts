import { asked, FLOW_FROM, flowColumn, part, rotorPart } from "../fields.ts";
import type { KindSpec } from "../spec.ts";

/** Pressure against flow of a rotor. */
export const curve: KindSpec = {
  kind: "curve",
  name: "Curve test",
  row: "point",
  plate: true,
  fields: [
    rotorPart("Rotor", "ducted"),
    asked("diameter", "Rotor diameter", "length"),
    part("motor", "Motor that turned it", "motors", false, "gives the shaft power from its current"),
    FLOW_FROM,
  ],
  columns: [
    { key: "speed", label: "Speed", dimension: "speed", need: "required", carried: true },
    { key: "pressure", label: "Pressure", dimension: "pressure", need: "required" },
    flowColumn,
    { key: "voltage", label: "Voltage", dimension: "voltage", need: "optional" },
    { key: "current", label: "Current", dimension: "current", need: "optional" },
    { key: "torque", label: "Torque", dimension: "torque", need: "optional" },
    { key: "density", label: "Air density", dimension: "density", need: "optional", carried: true },
  ],
  instruments: [
    { key: "pressure", label: "Pressure", dimension: "pressure" },
    { key: "flow", label: "Flow", dimension: "flow" },
    { key: "speed", label: "Speed", dimension: "speed" },
    { key: "current", label: "Current", dimension: "current" },
  ],
};
