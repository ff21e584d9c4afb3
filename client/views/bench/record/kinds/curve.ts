import { asked, FLOW_FROM, flowColumn, part, rotorPart } from "../fields.ts";
import { NAMES } from "../headerNames.ts";
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
    {
      key: "speed",
      label: "Speed",
      dimension: "speed",
      need: "required",
      carried: true,
      names: NAMES.speed,
    },
    {
      key: "pressure",
      label: "Pressure",
      inList: "pressure (static)",
      dimension: "pressure",
      need: "required",
      names: NAMES.pressure,
    },
    flowColumn,
    { key: "voltage", label: "Voltage", dimension: "voltage", need: "optional", names: NAMES.voltage },
    {
      key: "current",
      label: "Current",
      dimension: "current",
      need: "optional",
      offered: true,
      hint: "tells the power, with the motor chosen",
      names: NAMES.current,
    },
    { key: "torque", label: "Torque", dimension: "torque", need: "optional", names: NAMES.torque },
    {
      key: "density",
      label: "Air density",
      dimension: "density",
      need: "optional",
      carried: true,
      names: ["rho", "ρ", "dichte"],
    },
  ],
  instruments: [
    { key: "pressure", label: "Pressure", dimension: "pressure" },
    { key: "flow", label: "Flow", dimension: "flow" },
    { key: "speed", label: "Speed", dimension: "speed" },
    { key: "current", label: "Current", dimension: "current" },
  ],
};
