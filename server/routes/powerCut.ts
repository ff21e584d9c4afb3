import { powerCutRequest, powerCutResponse } from "../../shared/model/api/powerCut.ts";
import { powerCut } from "../../shared/physics/powerCut.ts";
import { computation } from "./compute.ts";
import { inlineBuild } from "./inlineBuild.ts";

/** How long a build given inline holds after its power is cut. */
export const powerCutComputation = computation({
  path: "/power-cut",
  summary: "Seconds until each attitude lets go after the power is cut, and from switching on to holding",
  request: powerCutRequest,
  response: powerCutResponse,
  compute: ({ inertia, ...build }) => powerCut({ ...inlineBuild(build), inertia }),
});
