import { type PredictRequest, predictRequest, predictResponse } from "../../shared/model/api/predict.ts";
import { OutOfRangeError } from "../../shared/numeric/errors.ts";
import { predict } from "../../shared/physics/predict.ts";
import { predictPropeller } from "../../shared/physics/propeller.ts";
import { computeRoute } from "./compute.ts";
import type { Route } from "./route.ts";

/** A propeller presses by its thrust, a ducted rotor through its skirt; the schema has seen that the skirt is there. */
function predictEither({ rotor, skirt, ...rest }: PredictRequest) {
  if (rotor.kind === "propeller") return predictPropeller({ ...rest, rotor });
  if (!skirt) throw new OutOfRangeError("skirt", Number.NaN, "a skirt: perimeter, area, gap, land");
  return predict({ ...rest, rotor, skirt });
}

/** What a build does at one state, everything given inline. */
export const predictRoutes = (): Route[] => [
  computeRoute({
    path: "/predict",
    summary: "Operating point, suction force and what it holds, of a build given inline",
    request: predictRequest,
    response: predictResponse,
    compute: predictEither,
  }),
];
