import { calibrate } from "../../shared/fit/calibration.ts";
import { calibrateRequest, calibrateResponse } from "../../shared/model/api/calibrate.ts";
import { computeRoute } from "./compute.ts";
import type { Route } from "./route.ts";

/** Gap and friction from pull and leak tests given inline: the function that the stored tests go through as well. */
export const calibrateRoutes = (): Route[] => [
  computeRoute({
    path: "/calibrate",
    summary: "Gap and friction that make the predictions agree with pull and leak tests",
    request: calibrateRequest,
    response: calibrateResponse,
    compute: calibrate,
  }),
];
