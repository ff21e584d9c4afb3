import { chooseJob, chooseRequest } from "../../shared/model/api/choose.ts";
import type { Jobs } from "../jobs/jobs.ts";
import type { Store } from "../store/store.ts";
import { streamJob } from "./chooseEvents.ts";
import { chooseResultRoutes } from "./chooseResults.ts";
import { openStream } from "./eventStream.ts";
import { type Route, route } from "./route.ts";

const TAG = "choose";

function startRoute({ file }: Store, jobs: Jobs): Route {
  return route({
    method: "post",
    path: "/choose",
    tag: TAG,
    summary: "Begin to solve every combination of motor, rotor, pack and skirt",
    body: chooseRequest,
    responses: {
      200: { description: "the same numbers were asked for before: that job", schema: chooseJob },
      202: { description: "begun", schema: chooseJob },
    },
    refusals: [409, 422, 429],
    answer: async ({ body }) => {
      const { job, known } = jobs.start(body, await jobs.threads.run("question", { file, request: body }));
      return {
        status: known ? 200 : 202,
        body: job.report(),
        headers: { Location: `/api/v1/choose/${job.id}` },
      };
    },
  });
}

function eventsRoute(jobs: Jobs): Route {
  return {
    method: "get",
    path: "/choose/:id/events",
    tag: TAG,
    summary: "Follow a search as server-sent events, seven a second",
    responses: {
      200: {
        description:
          "progress, then done, cancelled or failed, each with this as its data; between them sets: the best of the pieces solved since",
        schema: chooseJob,
        contentType: "text/event-stream",
      },
    },
    refusals: [404],
    serve: (request, response) => {
      const job = jobs.find(String(request.params.id));
      const stream = openStream(request, response);
      if (stream) streamJob(job, jobs, stream);
    },
  };
}

/** Search: a job with its progress, its results by page, and its end. */
export function chooseRoutes(store: Store, jobs: Jobs): Route[] {
  return [
    startRoute(store, jobs),
    route({
      method: "get",
      path: "/choose/:id",
      tag: TAG,
      summary: "How far a search has come",
      responses: { 200: { description: "its state", schema: chooseJob } },
      refusals: [404],
      answer: ({ id }) => ({ status: 200, body: jobs.find(id).report() }),
    }),
    eventsRoute(jobs),
    ...chooseResultRoutes(jobs),
    route({
      method: "delete",
      path: "/choose/:id",
      tag: TAG,
      summary: "Cancel a search that runs, forget one that ended; nothing of it is kept",
      responses: { 204: { description: "gone" } },
      refusals: [404],
      answer: ({ id }) => {
        jobs.remove(id);
        return { status: 204 };
      },
    }),
  ];
}
