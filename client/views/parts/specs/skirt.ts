import { type FormSpec, marksField, nameField, noteField, number, quantity } from "../spec.ts";

export const skirtForm: FormSpec = {
  collection: "skirts",
  one: "skirt",
  many: "Skirts",
  fills:
    "The lip round the cavity: its area, its length, the gap it keeps. Leak and pull tests tell how large that gap really is.",
  sections: [
    {
      title: "The lip round the cavity",
      fields: [
        nameField,
        {
          kind: "rectangle",
          path: "outline",
          label: "Rectangle inside the lip",
          hint: "with the radius of its corners; length along the lip and area follow",
          gives: { perimeter: "perimeter", area: "area" },
        },
        quantity("perimeter", "Length along the lip", "length", { example: "25 cm", required: true }),
        quantity("area", "Area inside the lip", "area", { required: true }),
        quantity("land", "Width of the lip, along the flow", "length", { example: "3 mm", required: true }),
        quantity("straightSide", "Longest straight side", "length", {
          example: "9 cm",
          hint: "for joints met along it; 0 of a ring; else its outline says it, or a quarter of the lip",
        }),
        quantity("gap", "Gap as set", "length", { example: "0.6 mm", required: true, doubt: "gap" }),
        {
          kind: "choice",
          path: "gapBasis",
          label: "How the gap is known",
          options: [
            ["set", "set by its parts"],
            ["measured", "measured with feeler gauges or shims"],
          ],
        },
        {
          kind: "choice",
          path: "edge",
          label: "Edge",
          options: [
            ["square", "square"],
            ["thin", "thin"],
            ["rounded", "rounded"],
          ],
        },
        noteField,
      ],
    },
    {
      title: "Openings beside the lip: wheel slots, holes, honeycombs",
      folded: true,
      fields: [
        {
          kind: "list",
          path: "openings",
          label: "Openings",
          add: "Add an opening",
          columns: [
            quantity("area", "Area", "smallArea", { required: true, example: "20 mm²" }),
            number("dischargeCoefficient", "Discharge coefficient", { hint: "0.61 unless given" }),
          ],
        },
        {
          kind: "list",
          path: "holes",
          label: "Drilled holes",
          add: "Add drilled holes",
          columns: [
            number("count", "How many", { hint: "1 unless given" }),
            quantity("diameter", "Bore", "length", { required: true, example: "3 mm" }),
            quantity("thickness", "Wall", "length", { required: true, example: "2 mm" }),
          ],
        },
        {
          kind: "list",
          path: "honeycombs",
          label: "Honeycombs and grilles of short tubes",
          add: "Add a honeycomb",
          columns: [
            number("count", "Tubes", { required: true }),
            quantity("diameter", "Bore", "length", { required: true, example: "1.2 mm" }),
            quantity("length", "Length", "length", { required: true, example: "8 mm" }),
          ],
        },
      ],
    },
    {
      title: "Contact with the surface",
      folded: true,
      fields: [
        number("share", "Share of the load that the skirt carries, 0 to 1", { hint: "0 unless given" }),
        number("friction", "Friction of the skirt", { hint: "0.3 unless given" }),
        quantity("height", "Height", "length", { example: "8 mm" }),
        quantity("mass", "Mass", "mass", { example: "6 g" }),
        number("price", "Price"),
        number("leadTime", "Days until it is there"),
      ],
    },
    { title: "Estimates", folded: true, fields: [marksField] },
  ],
};
