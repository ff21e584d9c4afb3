import { type FormSpec, marksField, nameField, noteField, number, quantity } from "../spec.ts";

export const rotorForm: FormSpec = {
  collection: "rotors",
  one: "rotor",
  many: "Rotors",
  sections: [
    {
      title: "The family: one geometry, several diameters",
      fields: [
        nameField,
        {
          kind: "choice",
          path: "form",
          label: "Form",
          options: [
            ["centrifugal", "centrifugal"],
            ["mixed", "mixed"],
            ["axial", "axial"],
          ],
        },
        {
          kind: "list",
          path: "sizes",
          label: "Sizes in which it is printed or planned",
          required: true,
          add: "Add a size",
          columns: [
            quantity("diameter", "Diameter", "length", { required: true }),
            quantity("mass", "Mass", "mass"),
            quantity("height", "Height", "length"),
            quantity("tipClearance", "Tip clearance", "length"),
            number("price", "Price"),
          ],
        },
        noteField,
      ],
    },
    {
      title: "Geometry: estimates the curve until a curve test is logged; all four or none",
      folded: true,
      fields: [
        number("geometry.bladeCount", "Number of blades"),
        number("geometry.bladeExitAngle", "Blade exit angle, ° from the tangent", {
          hint: "5 to 90, for example 60",
        }),
        number("geometry.inletRatio", "Inlet diameter over rotor diameter", { hint: "for example 0.5" }),
        number("geometry.widthRatio", "Exit width over rotor diameter", { hint: "for example 0.1" }),
      ],
    },
    {
      title: "Material: for the stress at speed; all four or none",
      folded: true,
      fields: [
        quantity("material.density", "Density", "density", { unit: "g/cm³" }),
        number("material.poissonRatio", "Poisson's ratio", { hint: "for example 0.36" }),
        quantity("material.strength", "Strength across printed layers", "stress"),
        quantity("material.boreDiameter", "Bore", "length"),
      ],
    },
    { title: "Estimates", folded: true, fields: [marksField] },
  ],
};
