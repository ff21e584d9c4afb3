import { MATERIAL_KEYS, MATERIALS } from "../../../../shared/model/parts/materials.ts";
import { type FormSpec, marksField, nameField, noteField, number, quantity } from "../spec.ts";

export const rotorForm: FormSpec = {
  collection: "rotors",
  one: "rotor",
  many: "Rotors",
  fills:
    "A printed fan or a propeller, in one size or several. A curve test gives its pressure and flow, a thrust test a propeller's thrust; until then a ducted rotor's geometry gives an estimate.",
  sections: [
    {
      title: "The family: one geometry, several diameters",
      fields: [
        nameField,
        {
          kind: "choice",
          path: "kind",
          label: "Kind",
          options: [
            ["ducted", "ducted: evacuates a cavity"],
            ["propeller", "open propeller: presses by its thrust"],
          ],
        },
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
            quantity("mass", "Mass", "mass", { example: "2.4 g" }),
            quantity("height", "Height", "length", { example: "12 mm" }),
            quantity("tipClearance", "Tip clearance", "length", { example: "0.3 mm" }),
            number("price", "Price"),
            number("leadTime", "Days until it is there"),
          ],
        },
        noteField,
      ],
    },
    {
      title:
        "Geometry: estimates the curve of a centrifugal or mixed rotor until a curve test is logged; all four or none",
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
      title: "Material: for the stress at speed; a usual one or figures of its own, and the bore",
      folded: true,
      fields: [
        {
          kind: "choice",
          path: "material.preset",
          label: "Material, optional",
          options: [
            ["", "none of these; figures of its own"],
            ...MATERIAL_KEYS.map((key) => [key, MATERIALS[key].name] as const),
          ],
        },
        quantity("material.boreDiameter", "Bore, the hole for the shaft", "length", {
          example: "1.5 mm",
          hint: "0 for none; needed with a material",
        }),
        quantity("material.strength", "Strength across printed layers", "stress", {
          hint: "empty: the usual one, marked estimated",
        }),
        quantity("material.density", "Density", "materialDensity", {
          example: "1.24 g/cm³",
          hint: "empty: the usual one of the material",
        }),
        number("material.poissonRatio", "Poisson's ratio", {
          hint: "empty: the usual one; for example 0.36",
        }),
        quantity("material.bladeMass", "All blades of the first size together", "mass", {
          example: "0.8 g",
          hint: "they load the rim",
        }),
        quantity("material.rimThickness", "Disc at its rim, thickness in the first size", "length", {
          example: "1.2 mm",
          hint: "needed with the blades' mass",
        }),
        quantity(
          "material.bladeHeight",
          "Height of a blade that stands free on its disc, first size",
          "length",
          {
            example: "5 mm",
            hint: "with its thickness: the bending at its root; empty under a shroud",
          },
        ),
        quantity("material.bladeThickness", "Thickness of a blade, first size", "length", {
          example: "0.8 mm",
        }),
      ],
    },
    {
      title: "Propeller: what labels its Reynolds number",
      folded: true,
      fields: [
        quantity("chord", "Chord at 75 % of the radius, first size", "length", {
          example: "7 mm",
          hint: "a tenth of the diameter unless given",
        }),
      ],
    },
    { title: "Estimates", folded: true, fields: [marksField] },
  ],
};
