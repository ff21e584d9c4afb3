import { type FormSpec, marksField, nameField, noteField, number, quantity } from "../spec.ts";

export const surfaceForm: FormSpec = {
  collection: "surfaces",
  one: "surface",
  many: "Surfaces",
  sections: [
    {
      title: "What the vehicle clings to",
      fields: [
        nameField,
        quantity("roughness", "Roughness, added to the gap", "length", {
          example: "0.05 mm",
          hint: "0 unless given",
        }),
        number("wheelFriction", "Friction of the wheels on it", {
          hint: "a friction test takes its place",
          doubt: "wheelFriction",
        }),
        number("skirtFriction", "Friction of the skirt on it", { hint: "in the place of the skirt's own" }),
        noteField,
      ],
    },
    { title: "Estimates", folded: true, fields: [marksField] },
  ],
};
