import { z } from "zod";
import { GEAR } from "../limits.ts";
import { name, nonNegative, note, positive, retired } from "../scalar.ts";
import { statedOf } from "../stated.ts";

const figures = {
  wheelRadius: positive("m, of the wheel with its tyre, unloaded", GEAR.wheelRadius).optional(),
  sag: nonNegative("m, by which the tyres give under the vehicle's own weight", GEAR.sag).optional(),
};

/** Running gear: wheels, tyres and springs between the vehicle and the surface. Ride-height tests logged for it tell how stiff it is. */
export const gear = z.strictObject({
  name: name(),
  ...figures,
  ...statedOf(figures),
  note: note(),
  retired: retired(),
});

export type Gear = z.output<typeof gear>;
