import { predictRequest, predictResponse } from "../../shared/model/api/predict.ts";
import { predict } from "../../shared/physics/predict.ts";
import { computeRoute } from "./compute.ts";
import type { Route } from "./route.ts";

/** What a build does at one state, everything given inline. */
export const predictRoutes = (): Route[] => [
  computeRoute({
    path: "/predict",
    summary: "Operating point, suction force and what it holds, of a build given inline",
    request: predictRequest,
    response: predictResponse,
    compute: predict,
  }),
];
