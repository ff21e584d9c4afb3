import { type FormSpec, marksField, nameField, noteField, number, quantity } from "../spec.ts";

const TESTED = "empty: a motor test gives it";

export const motorForm: FormSpec = {
  collection: "motors",
  one: "motor",
  many: "Motors",
  fills: "What its maker states is enough to start with; a motor test takes its place.",
  sections: [
    {
      title: "As its maker states it; motor tests take the place of these constants",
      fields: [
        nameField,
        quantity("kv", "Speed constant K_v", "kv", { hint: TESTED }),
        quantity("resistance", "Resistance at 20 °C, terminal to terminal", "resistance", { hint: TESTED }),
        quantity("noLoadCurrent", "No-load current", "current", { hint: TESTED }),
        quantity("mass", "Mass", "mass", { example: "14 g" }),
        noteField,
      ],
    },
    {
      title: "Heat and limits",
      folded: true,
      fields: [
        quantity("ratedVoltage", "Rated voltage", "voltage", {
          example: "8.4 V",
          hint: "the most it may get, from a full pack: 8.4 V where two lithium cells are allowed",
        }),
        quantity("maxCurrent", "Greatest current", "current", { example: "4 A" }),
        quantity("thermalResistance", "Thermal resistance, winding to air", "thermalResistance", {
          hint: "empty: estimated from diameter and length; without these the winding is taken cold",
        }),
        quantity("thermalTimeConstant", "Thermal time constant", "time", { example: "90 s" }),
        quantity("windingLimit", "Winding limit", "temperature", { example: "120 °C" }),
        quantity("viscousTorque", "Friction per speed", "viscousTorque"),
      ],
    },
    {
      title: "Size and price",
      folded: true,
      fields: [
        quantity("diameter", "Diameter", "length", { example: "18 mm" }),
        quantity("length", "Length", "length", { example: "20 mm" }),
        number("price", "Price"),
        number("leadTime", "Days until it is there"),
      ],
    },
    { title: "Estimates", folded: true, fields: [marksField] },
  ],
};
