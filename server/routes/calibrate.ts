import { calibrate } from "../../shared/fit/calibration.ts";
import { calibrateRequest, calibrateResponse } from "../../shared/model/api/calibrate.ts";
import { computation } from "./compute.ts";

/** Gap and friction from pull and leak tests given inline: the function that the stored tests go through as well. */
export const calibrateComputation = computation({
  path: "/calibrate",
  summary: "Gap and friction that make the predictions agree with pull and leak tests",
  request: calibrateRequest,
  response: calibrateResponse,
  compute: calibrate,
});
