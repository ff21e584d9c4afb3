import { type FormSpec, marksField, nameField, noteField, number, quantity } from "../spec.ts";

export const packForm: FormSpec = {
  collection: "packs",
  one: "pack",
  many: "Packs",
  fills:
    "Cells in series and in parallel. A discharge test gives capacity, resistance and voltage by charge; until then the cells' chemistry stands in.",
  sections: [
    {
      title: "The pack",
      fields: [
        nameField,
        number("series", "Cells in series", { required: true }),
        number("parallel", "Cells in parallel", { hint: "1 unless given" }),
        quantity("wireResistance", "Wires and plugs", "smallResistance", { example: "20 mΩ" }),
        quantity("mass", "Mass", "mass", { example: "38 g" }),
        noteField,
      ],
    },
    {
      title: "One cell",
      fields: [
        quantity("cell.capacity", "Capacity", "charge", { required: true }),
        quantity("cell.resistance", "Resistance", "smallResistance", {
          example: "25 mΩ",
          required: true,
        }),
        number("cell.coldFactor", "Rise of the resistance at freezing", {
          example: "2.5",
          hint: "times what it is at room temperature: two to three is common practice, no source; 1 unless given",
        }),
        quantity("cell.minimumVoltage", "Least voltage under load", "voltage", {
          example: "3.2 V",
          required: true,
          hint: "never below the maker's minimum",
        }),
        quantity("cell.maxCurrent", "Greatest current", "current", { example: "9 A" }),
        {
          kind: "list",
          path: "cell.curve",
          label: "Open-circuit voltage by charge, from 0 to 100 %",
          tuple: true,
          add: "Add a point",
          columns: [
            quantity("0", "Charge", "fraction", { required: true }),
            quantity("1", "Voltage", "voltage", { required: true }),
          ],
        },
        {
          kind: "choice",
          path: "cell.chemistry",
          label: "Chemistry, where there is no curve",
          hint: "its published curve stands in, marked estimated; a discharge test measures the pack's own",
          options: [
            ["", "not said"],
            ["lithium-ion", "lithium-ion or lithium polymer, full at 4.2 V"],
            ["lithium-iron-phosphate", "lithium iron phosphate, full at 3.6 V"],
          ],
        },
      ],
    },
    {
      title: "Size and price",
      folded: true,
      fields: [
        quantity("height", "Height", "length", { example: "16 mm" }),
        number("price", "Price"),
        number("leadTime", "Days until it is there"),
      ],
    },
    { title: "Estimates", folded: true, fields: [marksField] },
  ],
};
