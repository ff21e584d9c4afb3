import { type FormSpec, nameField, noteField } from "../spec.ts";

export const gearForm: FormSpec = {
  collection: "gears",
  one: "running gear",
  many: "Running gear",
  sections: [
    {
      title: "Wheels, tyres and springs; ride-height tests tell how far they give",
      fields: [nameField, noteField],
    },
  ],
};
