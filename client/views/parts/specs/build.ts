import { type FormSpec, nameField, noteField, number, quantity } from "../spec.ts";

export const buildForm: FormSpec = {
  collection: "builds",
  one: "build",
  many: "Builds",
  fills:
    "A rotor, a motor, a pack and a skirt on one vehicle. Match, Attitudes, Run-down, Mass and Fit-up answer for it.",
  sections: [
    {
      title: "The parts",
      fields: [
        nameField,
        {
          kind: "reference",
          path: "rotor",
          label: "Rotor or propeller",
          collection: "rotors",
          required: true,
        },
        quantity("diameter", "Rotor diameter", "length", { required: true }),
        { kind: "reference", path: "motor", label: "Motor", collection: "motors", required: true },
        { kind: "reference", path: "pack", label: "Pack", collection: "packs", required: true },
        {
          kind: "reference",
          path: "skirt",
          label: "Skirt",
          collection: "skirts",
          hint: "a ducted rotor needs one; a propeller presses with or without",
        },
        { kind: "reference", path: "surface", label: "Surface", collection: "surfaces", required: true },
        {
          kind: "reference",
          path: "gear",
          label: "Running gear",
          collection: "gears",
          hint: "its ride-height tests tell how far the gap gives; rigid without",
        },
        quantity("vehicle.mass", "Mass, everything on board", "mass", {
          hint: "the sum of its parts and of the lines in Mass where it is left empty",
          doubt: "vehicle.mass",
        }),
        noteField,
      ],
    },
    {
      title: "What it must hold",
      fields: [
        number("targetMargin", "Wanted margin", { hint: "1.5 unless given" }),
        quantity("fallHeight", "Height above the ground where it works", "height", {
          example: "2.5 m",
          hint: "for the energy of a fall",
        }),
        number("inertia", "Inertia of rotor and motor together, kg·m²", {
          example: "1.2e-6",
          hint: "for the seconds after a power cut; from their masses unless given",
        }),
        {
          kind: "list",
          path: "attitudes",
          label: "Attitudes beside wall and ceiling",
          add: "Add an attitude",
          columns: [
            { kind: "text", path: "name", label: "Name", required: true },
            number("angle", "Angle, °: 0 floor, 90 wall, 180 ceiling", { required: true }),
          ],
        },
      ],
    },
    {
      title: "Charge, throttle and other loads",
      folded: true,
      fields: [
        quantity("charge", "State of charge", "fraction", { unless: 0.6 }),
        quantity("supply.duty", "Throttle", "fraction", { example: "80 %", unless: 1 }),
        quantity("supply.driverResistance", "Driver", "smallResistance", { example: "20 mΩ" }),
        quantity("supply.auxCurrent", "Other loads on the pack", "current", { example: "0.2 A" }),
      ],
    },
    {
      title: "Wheels and balance",
      folded: true,
      fields: [
        quantity("vehicle.wheelbase", "Between the axles", "length", {
          example: "110 mm",
          unless: 0.11,
        }),
        quantity("vehicle.track", "Between left and right wheels", "length", {
          example: "90 mm",
          unless: 0.09,
        }),
        quantity("vehicle.cgHeight", "Height of the centre of gravity", "length", {
          example: "20 mm",
          unless: 0.02,
        }),
        quantity("vehicle.cgFromRear", "Centre of gravity ahead of the rear axle", "length", {
          example: "55 mm",
          unless: 0.055,
        }),
        quantity("vehicle.suctionFromRear", "Suction ahead of the rear axle", "length", {
          example: "55 mm",
          unless: 0.055,
        }),
        {
          kind: "choice",
          path: "vehicle.driven",
          label: "Driven axles",
          options: [
            ["both", "both"],
            ["front", "front"],
            ["rear", "rear"],
          ],
        },
        quantity("vehicle.verticalStiffness", "Stiffness of tyres and springs together", "stiffness", {
          hint: "rigid unless given; a ride-height test takes its place",
          doubt: "vehicle.verticalStiffness",
        }),
        quantity("vehicle.gapLoad", "Load on it when the gap was set", "load", {
          example: "180 g",
          hint: "its own weight unless given",
        }),
        number("vehicle.rollingResistance", "Rolling resistance", { hint: "0.02 unless given" }),
        number("vehicle.jolt", "Jolts, in g on top of gravity", { hint: "0 unless given" }),
        quantity("vehicle.jetArea", "Exhaust area, where its thrust counts", "area", { example: "3 cm²" }),
        number("vehicle.jetAngle", "Exhaust, ° from straight off the surface", { hint: "0 unless given" }),
      ],
    },
    {
      title: "Air",
      folded: true,
      fields: [
        quantity("air.temperature", "Temperature", "temperature", {
          example: "18 °C",
          unless: 293.15,
        }),
        quantity("air.pressure", "Pressure", "airPressure", {
          example: "990 hPa",
          unless: 101325,
        }),
        quantity("air.humidity", "Humidity", "fraction", { unless: 0.5 }),
      ],
    },
    {
      title: "Set in this build, in the place of its parts' values",
      folded: true,
      fields: [
        number("overrides.series", "Cells in series"),
        quantity("overrides.gap", "Gap", "length", { example: "0.6 mm" }),
        number("overrides.wheelFriction", "Friction of the wheels"),
      ],
    },
  ],
};
