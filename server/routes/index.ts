import type { Jobs } from "../jobs/jobs.ts";
import type { Store } from "../store/store.ts";
import type { Threads } from "../threads/threads.ts";
import { archiveRoutes } from "./archive.ts";
import { benchRoutes } from "./bench.ts";
import { chooseRoutes } from "./choose.ts";
import { collectionRoutes } from "./collections.ts";
import { COMPUTATIONS } from "./computations.ts";
import { computeRoute } from "./compute.ts";
import { eventRoutes } from "./events.ts";
import { nextTestRoutes } from "./nextTests.ts";
import { openApiRoute } from "./openapi.ts";
import type { Route } from "./route.ts";

/** What the routes stand on. */
export interface Service {
  readonly store: Store;
  readonly clock: () => Date;
  readonly threads: Threads;
  readonly jobs: Jobs;
}

/** Every route of the API. A new one is one more line here; its documentation comes with it. */
export function apiRoutes({ store, clock, threads, jobs }: Service): Route[] {
  const routes = [
    ...collectionRoutes(store, clock),
    ...nextTestRoutes(store, threads),
    ...benchRoutes(store, clock),
    ...archiveRoutes(store, clock),
    ...eventRoutes(store),
    ...COMPUTATIONS.map((each) => computeRoute(each, threads)),
    ...chooseRoutes(store, jobs),
  ];
  return [...routes, openApiRoute(routes)];
}
