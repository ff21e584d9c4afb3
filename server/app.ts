import express, { type Express } from "express";
import { serveDocs } from "./docs/serveDocs.ts";
import { onlyFinite } from "./finite.ts";
import { Foretelling } from "./foretelling.ts";
import { Jobs } from "./jobs/jobs.ts";
import type { Lan } from "./lan/lan.ts";
import { Visitors } from "./lan/visitors.ts";
import { serveClient } from "./middleware/client.ts";
import { compress } from "./middleware/compression.ts";
import { answerErrors } from "./middleware/errors.ts";
import { refuseOtherHosts } from "./middleware/hosts.ts";
import { pairedOnly } from "./middleware/pairedOnly.ts";
import { logRequests } from "./middleware/requestLog.ts";
import { refuseOtherOrigins, securityHeaders } from "./middleware/security.ts";
import { BookAnswers } from "./routes/bookAnswers.ts";
import { apiRoutes } from "./routes/index.ts";
import { mount } from "./routes/mount.ts";
import type { Store } from "./store/store.ts";
import { ownThread } from "./threads/ownThread.ts";
import type { Threads } from "./threads/threads.ts";

export interface AppOptions {
  readonly store: Store;
  readonly clock: () => Date;
  /** folder of the built client; without it only the API is served */
  readonly client?: string;
  /** names by which it may be asked, besides this machine's own */
  readonly names?: readonly string[];
  /** the local network, where it is served as well */
  readonly lan?: Lan;
  /** what does the long work; the server's own thread unless given */
  readonly threads?: Threads;
  /** what is worked out of the book; new unless given */
  readonly answers?: BookAnswers;
  /** choosings under way; new unless given */
  readonly jobs?: Jobs;
  /** receives a line for each request; none is written unless given */
  readonly logRequest?: (line: string) => void;
  /** where unexpected errors go */
  readonly log?: (error: unknown) => void;
}

const API = "/api/v1";

/** The whole server but the listening. */
export function createApp(options: AppOptions): Express {
  const { store, clock, client, names = [], log = console.error, threads = ownThread() } = options;
  const { jobs = new Jobs(threads, clock, log), answers = new BookAnswers(store), lan = null } = options;
  const foretelling = new Foretelling(store, threads, log);
  const visitors = new Visitors(store.devices, clock);
  const app = express();
  app.disable("x-powered-by");
  app.set("json replacer", onlyFinite);
  if (options.logRequest) app.use(logRequests(options.logRequest, clock));
  app.use(securityHeaders, refuseOtherHosts(names, lan?.names ?? []), refuseOtherOrigins);
  app.use(pairedOnly(visitors, API), compress(API));
  app.use(
    API,
    mount(apiRoutes({ store, clock, threads, jobs, answers, foretelling, visitors, lan }), threads),
  );
  app.use("/api", mount([], threads));
  app.use("/docs", serveDocs());
  if (client) app.use(serveClient(client));
  app.use(answerErrors(log));
  return app;
}
