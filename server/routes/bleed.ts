import { bleedFlow } from "../../shared/fit/bleed.ts";
import { bleedRequest, bleedResponse } from "../../shared/model/api/fits.ts";
import { airFrom, DEFAULT_WEATHER } from "../../shared/physics/air.ts";
import { computeRoute } from "./compute.ts";
import type { Route } from "./route.ts";

/** The bench's flow meter: a plate with drilled holes and a pressure reading. */
export const bleedRoutes = (): Route[] => [
  computeRoute({
    path: "/bleed",
    summary: "Flow through the holes of a bleed plate at a pressure",
    request: bleedRequest,
    response: bleedResponse,
    compute: ({ holes, pressure, air = DEFAULT_WEATHER }) =>
      bleedFlow({ holes, pressure, air: airFrom(air) }),
  }),
];
