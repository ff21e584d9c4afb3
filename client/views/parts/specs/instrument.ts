import type { Measured } from "../../../../shared/model/parts/instrument.ts";
import { type FormSpec, type MeasuredSpec, nameField, noteField, number } from "../spec.ts";

/** What instruments measure, as a maker says it. */
const MEASURES = [
  ["pressure", "pressure"],
  ["flow", "flow"],
  ["speed", "speed"],
  ["current", "current"],
  ["voltage", "voltage"],
  ["load", "load or thrust"],
  ["torque", "torque"],
  ["angle", "tilt"],
  ["length", "height or gap"],
] as const satisfies readonly (readonly [Measured, string])[];

const measured = (path: string, label: string, hint: string): MeasuredSpec => ({
  kind: "measured",
  by: "measures",
  path,
  label,
  hint,
});

export const instrumentForm: FormSpec = {
  collection: "instruments",
  one: "instrument",
  many: "Instruments",
  fills:
    "A scale, a meter, a pressure sensor, with how far off it may be. Tests name what they were read with.",
  sections: [
    {
      title: "What it reads, and how well",
      fields: [
        nameField,
        { kind: "choice", path: "measures", label: "Measures", options: MEASURES },
        number("percent", "Per cent of the reading", {
          example: "1",
          hint: "one error for all its readings, in every test that names it; standard uncertainty",
        }),
        measured("absolute", "Fixed part", "differs from reading to reading; standard uncertainty"),
        measured("resolution", "Resolution", "the step that it shows; counts as step/√12 in each reading"),
        noteField,
      ],
    },
  ],
};
