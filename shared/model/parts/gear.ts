import { z } from "zod";
import { name, note, retired } from "../scalar.ts";

/** Running gear: wheels, tyres and springs between the vehicle and the surface. Ride-height tests logged for it tell how stiff it is. */
export const gear = z.strictObject({
  name: name(),
  note: note(),
  retired: retired(),
});
