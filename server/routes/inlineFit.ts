import { NoConvergenceError, NotEnoughDataError, OutOfRangeError } from "../../shared/numeric/errors.ts";
import { Refusal } from "../refusal.ts";

const SIZES =
  "The numbers lie too far apart, or too near 0, to be computed with. Check their units: everything is in SI.";

/** Whether every number in an answer is one. */
function finite(value: unknown): boolean {
  if (typeof value === "number") return Number.isFinite(value);
  if (value === null || typeof value !== "object") return true;
  return Object.values(value).every(finite);
}

/** Whether an error says of a number what can't be put right in the body: it is none, or was made on the way. */
function onTheWay({ value, quantity }: OutOfRangeError, request: object): boolean {
  return !Number.isFinite(value) || !(quantity.split(".")[0] in request);
}

/**
 * A fit as the API asks it: whatever it can't answer is laid to its list of readings.
 *
 * @param field - the list of readings in the request: "points"
 * @param compute - throws as the fits of shared/bench do
 * @returns the same, which throws {@link Refusal} naming the field where the numbers themselves leave no answer
 */
export function inlineFit<Q extends object, A>(field: string, compute: (request: Q) => A): (request: Q) => A {
  const tooFar = () => new Refusal(422, "out-of-range", SIZES, [{ path: field, message: SIZES }]);
  return (request) => {
    let answer: A;
    try {
      answer = compute(request);
    } catch (error) {
      if (error instanceof NotEnoughDataError && error.path === "")
        throw new NotEnoughDataError(error.message, "", field);
      if (error instanceof NoConvergenceError) throw tooFar();
      if (error instanceof OutOfRangeError && onTheWay(error, request)) throw tooFar();
      throw error;
    }
    if (!finite(answer)) throw tooFar();
    return answer;
  };
}
