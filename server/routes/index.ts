import type { Jobs } from "../jobs/jobs.ts";
import type { Store } from "../store/store.ts";
import { archiveRoutes } from "./archive.ts";
import { benchRoutes } from "./bench.ts";
import { bleedRoutes } from "./bleed.ts";
import { calibrateRoutes } from "./calibrate.ts";
import { chooseRoutes } from "./choose.ts";
import { collectionRoutes } from "./collections.ts";
import { eventRoutes } from "./events.ts";
import { fitRoutes } from "./fits.ts";
import { limitsRoutes } from "./limits.ts";
import { nextTestRoutes } from "./nextTests.ts";
import { openApiRoute } from "./openapi.ts";
import { predictRoutes } from "./predict.ts";
import type { Route } from "./route.ts";
import { rundownRoutes } from "./rundown.ts";
import { waysRoutes } from "./ways.ts";

/** Every route of the API. A new one is one more line here; its documentation comes with it. */
export function apiRoutes(store: Store, clock: () => Date, jobs: Jobs): Route[] {
  const routes = [
    ...collectionRoutes(store, clock),
    ...nextTestRoutes(store),
    ...benchRoutes(store, clock),
    ...archiveRoutes(store, clock),
    ...eventRoutes(store),
    ...predictRoutes(),
    ...rundownRoutes(),
    ...limitsRoutes(),
    ...waysRoutes(),
    ...fitRoutes(),
    ...bleedRoutes(),
    ...calibrateRoutes(),
    ...chooseRoutes(store, jobs),
  ];
  return [...routes, openApiRoute(routes)];
}
