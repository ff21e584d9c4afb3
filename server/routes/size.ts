import type { Need } from "../../shared/decide/size/input.ts";
import { sizesOf } from "../../shared/decide/size/size.ts";
import { type SizeRequest, sizeRequest, sizeResponse } from "../../shared/model/api/size.ts";
import { OutOfRangeError } from "../../shared/numeric/errors.ts";
import { computation } from "./compute.ts";

function needOf({ pull, hold }: SizeRequest): Need {
  if (pull !== undefined) return { pull };
  if (!hold) throw new OutOfRangeError("pull", Number.NaN, "a pull, or a margin to hold");
  const { angle = "worst", margin, mode } = hold;
  return { hold: { angle, margin, mode } };
}

/** A family without a size of its own takes the first that is asked for. */
function rotorOf({ rotor, diameters: [first] }: SizeRequest) {
  return rotor.kind === "propeller" ? rotor : { ...rotor, diameter: rotor.diameter ?? first };
}

function sizes(request: SizeRequest) {
  const { air, motor, pack, supply, vehicle, motorLimits, cellLimits, rotorBody } = request;
  const build = { air, rotor: rotorOf(request), motor, pack, supply, skirt: request.skirt ?? null, vehicle };
  const allows = { motor: motorLimits, cell: cellLimits, rotor: rotorBody };
  const question = { build, allows, need: needOf(request), cell: request.cell ?? null };
  return sizesOf(question, request.diameters);
}

/** From the need back to the rotor, everything given inline. */
export const sizeComputation = computation({
  path: "/size",
  summary:
    "For each diameter of a rotor family: speed, K_v and watts that make a pull, and which takes least",
  request: sizeRequest,
  response: sizeResponse,
  compute: sizes,
});
