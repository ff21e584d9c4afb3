import { archiveRoutes } from "./archive.ts";
import { backupRoutes } from "./backups.ts";
import { benchRoutes } from "./bench.ts";
import { bookFitsRoutes } from "./bookFits.ts";
import { calibrationRoutes } from "./calibration.ts";
import { chooseRoutes } from "./choose.ts";
import { collectionRoutes } from "./collections.ts";
import { COMPUTATIONS } from "./computations.ts";
import { computeRoute } from "./compute.ts";
import { deviceRoutes } from "./devices.ts";
import { eventRoutes } from "./events.ts";
import { healthRoute } from "./health.ts";
import { nextTestRoutes } from "./nextTests.ts";
import { openApiRoute } from "./openapi.ts";
import { printSeriesRoutes } from "./printSeries.ts";
import { recordRoutes } from "./record.ts";
import type { Route } from "./route.ts";
import type { Service } from "./service.ts";
import { verdictRoutes } from "./verdict.ts";

/** Every route of the API. A new one is one more line here; its documentation comes with it. */
export function apiRoutes(service: Service): Route[] {
  const { store, threads, jobs } = service;
  const routes = [
    ...collectionRoutes(service),
    ...nextTestRoutes(service),
    ...printSeriesRoutes(store, threads),
    ...calibrationRoutes(service),
    ...bookFitsRoutes(service),
    ...verdictRoutes(store, threads),
    ...recordRoutes(service),
    healthRoute(store),
    ...benchRoutes(service),
    ...archiveRoutes(service),
    ...backupRoutes(service),
    ...eventRoutes(store),
    ...deviceRoutes(service),
    ...COMPUTATIONS.map((each) => computeRoute(each, threads)),
    ...chooseRoutes(store, jobs),
  ];
  return [...routes, openApiRoute(routes)];
}
