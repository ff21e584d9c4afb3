import { rundownRequest, rundownResponse } from "../../shared/model/api/rundown.ts";
import { runDown } from "../../shared/physics/rundown.ts";
import { computation } from "./compute.ts";

/** A build given inline, from a state of charge to the end of its cell. */
export const rundownComputation = computation({
  path: "/rundown",
  summary: "Margins, voltage, speed and temperature until the cell is empty, and when each attitude lets go",
  request: rundownRequest,
  response: rundownResponse,
  compute: (request) => ({ keep: undefined, ...runDown(request) }),
});
