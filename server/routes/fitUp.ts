import type { z } from "zod";
import { stackOf } from "../../shared/decide/fitUp/stack.ts";
import { fitUpRequest, fitUpResponse } from "../../shared/model/api/fitUp.ts";
import { computation } from "./compute.ts";

function fitUp({ space, parts }: z.output<typeof fitUpRequest>) {
  const stack = stackOf([{ ...space, sense: 1 }, ...parts.map((part) => ({ ...part, sense: -1 as const }))]);
  const places = [
    { path: "space", name: null },
    ...parts.map(({ name = null }, i) => ({ path: `parts.${i}`, name })),
  ];
  return { ...stack, contributions: stack.contributions.map((each, i) => ({ ...places[i], ...each })) };
}

/** Whether the parts of a housing close between two faces. */
export const fitUpComputation = computation({
  path: "/fit-up",
  summary: "Whether a stack of parts closes between two faces: worst case, root-sum-square, chance",
  request: fitUpRequest,
  response: fitUpResponse,
  compute: fitUp,
  isQuick: () => true,
});
