import { solveSwaps } from "../../shared/decide/swaps/swaps.ts";
import { swapsRequest, swapsResponse } from "../../shared/model/api/swaps.ts";
import { NoConvergenceError } from "../../shared/numeric/errors.ts";
import { Refusal } from "../refusal.ts";
import { computation } from "./compute.ts";

/** Which lines to exchange so that a vehicle is light enough: the cheapest, the soonest or the fewest swaps. */
export const swapsComputation = computation({
  path: "/swaps",
  summary: "The cheapest, soonest or fewest swaps that make a list of masses light enough, exactly",
  request: swapsRequest,
  response: swapsResponse,
  compute: (request) => {
    try {
      return solveSwaps(request);
    } catch (error) {
      if (!(error instanceof NoConvergenceError)) throw error;
      throw new Refusal(422, error.code, error.message, [{ path: "lines", message: error.message }]);
    }
  },
});
