import { type FormSpec, marksField, nameField, noteField, number, quantity } from "../spec.ts";

export const motorForm: FormSpec = {
  collection: "motors",
  one: "motor",
  many: "Motors",
  sections: [
    {
      title: "As its maker states it; motor tests take the place of these constants",
      fields: [
        nameField,
        quantity("kv", "Speed constant K_v", "kv", { required: true }),
        quantity("resistance", "Resistance at 20 °C, terminal to terminal", "resistance", { required: true }),
        quantity("noLoadCurrent", "No-load current", "current", { required: true }),
        quantity("mass", "Mass", "mass"),
        noteField,
      ],
    },
    {
      title: "Heat and limits",
      folded: true,
      fields: [
        quantity("ratedVoltage", "Rated voltage", "voltage"),
        quantity("maxCurrent", "Greatest current", "current"),
        quantity("thermalResistance", "Thermal resistance, winding to air", "thermalResistance", {
          hint: "empty: estimated from diameter and length; without these the winding is taken cold",
        }),
        quantity("thermalTimeConstant", "Thermal time constant", "time"),
        quantity("windingLimit", "Winding limit", "temperature"),
        quantity("viscousTorque", "Friction per speed", "viscousTorque"),
      ],
    },
    {
      title: "Size and price",
      folded: true,
      fields: [
        quantity("diameter", "Diameter", "length"),
        quantity("length", "Length", "length"),
        number("price", "Price"),
      ],
    },
    { title: "Estimates", folded: true, fields: [marksField] },
  ],
};
