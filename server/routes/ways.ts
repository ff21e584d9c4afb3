import { sensitivitiesOf } from "../../shared/decide/sensitivities.ts";
import { keptBeside } from "../../shared/decide/ways/kept.ts";
import { waysToHold } from "../../shared/decide/ways/ways.ts";
import { sensitivitiesRequest, sensitivitiesResponse } from "../../shared/model/api/sensitivities.ts";
import { waysRequest, waysResponse } from "../../shared/model/api/ways.ts";
import { computation } from "./compute.ts";
import { inlineBuild } from "./inlineBuild.ts";

/** What moves a build's margin, and what would bring it to the target; everything given inline. */
export const waysComputations = [
  computation({
    path: "/sensitivities",
    summary: "Per cent of margin per per cent of each input, of a build given inline",
    request: sensitivitiesRequest,
    response: sensitivitiesResponse,
    compute: (request) => sensitivitiesOf(inlineBuild(request), request),
  }),
  computation({
    path: "/ways",
    summary:
      "For each setting alone: the value that brings the wanted attitude to the target margin, and what it costs",
    request: waysRequest,
    response: waysResponse,
    compute: (request) => {
      const setting = { build: inlineBuild(request), cell: request.cell ?? null };
      const ways = waysToHold(setting, request);
      return { ...ways, kept: keptBeside(setting, request, ways.margin) };
    },
  }),
];
