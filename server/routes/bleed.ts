import { bleedFlow } from "../../shared/fit/bleed.ts";
import { bleedRequest, bleedResponse } from "../../shared/model/api/fits.ts";
import { airFrom, DEFAULT_WEATHER } from "../../shared/physics/air.ts";
import { computation } from "./compute.ts";

/** The bench's flow meter: a plate with drilled holes and a pressure reading. */
export const bleedComputation = computation({
  path: "/bleed",
  summary: "Flow through the holes of a bleed plate at a pressure",
  isQuick: () => true,
  request: bleedRequest,
  response: bleedResponse,
  compute: ({ holes, pressure, air = DEFAULT_WEATHER }) => bleedFlow({ holes, pressure, air: airFrom(air) }),
});
