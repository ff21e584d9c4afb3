import { type FormSpec, marksField, nameField, noteField, number, quantity } from "../spec.ts";

export const plateForm: FormSpec = {
  collection: "plates",
  one: "bleed plate",
  many: "Bleed plates",
  fills: "Drilled holes that let a known flow through, for curve and leak tests.",
  sections: [
    {
      title: "Drilled holes over the cavity: the flow meter of tests that name it",
      fields: [
        nameField,
        quantity("thickness", "Thickness where it is drilled", "length", { example: "3 mm", required: true }),
        {
          kind: "list",
          path: "holes",
          label: "Kinds of hole",
          add: "Add a kind of hole",
          required: true,
          columns: [
            number("count", "How many", { required: true, example: "12" }),
            quantity("diameter", "Bore", "length", { required: true, example: "4 mm" }),
            {
              kind: "choice",
              path: "edge",
              label: "Edge",
              options: [
                ["sharp", "sharp"],
                ["rounded", "rounded"],
              ],
            },
          ],
        },
        number("dischargeCoefficient", "Own discharge coefficient", {
          example: "0.62",
          hint: "from a calibration, in the place of the law for its holes",
          doubt: "dischargeCoefficient",
        }),
        noteField,
      ],
    },
    { title: "Estimates", folded: true, fields: [marksField] },
  ],
};
