import { type FormSpec, marksField, nameField, noteField, number, quantity } from "../spec.ts";

export const surfaceForm: FormSpec = {
  collection: "surfaces",
  one: "surface",
  many: "Surfaces",
  fills:
    "What it has to cling to, with its joints: glass, a board, a painted wall. Friction tests give its grip, leak tests its roughness.",
  sections: [
    {
      title: "What the vehicle clings to",
      fields: [
        nameField,
        quantity("roughness", "Roughness, added to the gap", "roughness", {
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
    {
      title: "Joints that the vehicle crosses: grooves, steps, glazing bars",
      folded: true,
      fields: [
        {
          kind: "list",
          path: "joints",
          label: "Joints",
          add: "Add a joint",
          columns: [
            { kind: "text", path: "name", label: "Called" },
            quantity("depth", "Depth", "length", { required: true, example: "0.5 mm" }),
            quantity("depthUncertainty", "Depth, ±", "length", { example: "0.1 mm" }),
            quantity("width", "Width", "length", { required: true, example: "6 mm" }),
            quantity("widthUncertainty", "Width, ±", "length", { example: "0.3 mm" }),
            {
              kind: "choice",
              path: "met",
              label: "Met",
              options: [
                ["either", "either way, the worse counts"],
                ["along", "along a side of the lip"],
                ["across", "across, at right angles"],
              ],
            },
          ],
        },
      ],
    },
    { title: "Estimates", folded: true, fields: [marksField] },
  ],
};
