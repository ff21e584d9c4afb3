import { type FormSpec, marksField, nameField, noteField, quantity } from "../spec.ts";

export const gearForm: FormSpec = {
  collection: "gears",
  one: "running gear",
  many: "Running gear",
  fills: "Tyres or feet that give under the pull. A ride-height test tells by how much.",
  sections: [
    {
      title: "Wheels, tyres and springs; ride-height tests tell how far they give",
      fields: [
        nameField,
        quantity("wheelRadius", "Radius of a wheel with its tyre, unloaded", "length", { example: "17 mm" }),
        quantity("sag", "How far the tyres give under the vehicle's weight", "length", { example: "0.4 mm" }),
        noteField,
      ],
    },
    { title: "Estimates", folded: true, fields: [marksField] },
  ],
};
