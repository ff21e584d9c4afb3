import type { PredictRequest } from "../../shared/model/api/predict.ts";
import { OutOfRangeError } from "../../shared/numeric/errors.ts";
import type { AnyPredictInput } from "../../shared/physics/predictAny.ts";

type Parts = Pick<PredictRequest, "air" | "rotor" | "motor" | "pack" | "supply" | "skirt" | "vehicle">;

/** @returns the build that a body gives inline, of either kind; the schema has seen that a ducted rotor has its skirt */
export function inlineBuild({ rotor, skirt, air, motor, pack, supply, vehicle }: Parts): AnyPredictInput {
  const rest = { air, motor, pack, supply, vehicle };
  if (rotor.kind === "propeller") return { ...rest, rotor };
  if (!skirt) throw new OutOfRangeError("skirt", Number.NaN, "a skirt: perimeter, area, gap, land");
  return { ...rest, rotor, skirt };
}
