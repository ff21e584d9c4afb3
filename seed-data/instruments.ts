import { PLATE } from "./rigs/rig.ts";

const INVENTED = "Invented for the demo.";

/** What the demo's maker reads with: as accurate as the rigs' noise says. */
export const instruments = [
  {
    id: "multimeter-volts",
    data: { name: "Multimeter, volts", measures: "voltage", percent: 0.3, note: INVENTED },
  },
  {
    id: "multimeter-amps",
    data: { name: "Multimeter, amps", measures: "current", percent: 1, note: INVENTED },
  },
  {
    id: "optical-tachometer",
    data: { name: "Optical tachometer", measures: "speed", percent: 0.3, note: INVENTED },
  },
  {
    id: "kitchen-scale",
    data: { name: "Kitchen scale", measures: "load", absolute: { value: 5, unit: "g" }, note: INVENTED },
  },
  {
    id: "tilt-board",
    data: { name: "Tilt board", measures: "angle", absolute: { value: 0.5, unit: "°" }, note: INVENTED },
  },
  {
    id: "pressure-sensor",
    data: {
      name: "Differential pressure sensor",
      measures: "pressure",
      percent: 0.7,
      absolute: { value: 1.5, unit: "Pa" },
      resolution: { value: 1, unit: "Pa" },
      note: INVENTED,
    },
  },
];

export const plates = [
  {
    id: "drilled-plate",
    data: {
      name: "Drilled acrylic plate",
      thickness: PLATE[0].thickness,
      holes: PLATE.map(({ diameter, count }) => ({ diameter, count })),
      note: INVENTED,
    },
  },
];
