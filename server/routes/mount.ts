import express, { type Request, type RequestHandler, Router } from "express";
import type { z } from "zod";
import { readJson } from "../json.ts";
import { isOverNetwork } from "../middleware/pairedOnly.ts";
import { Refusal } from "../refusal.ts";
import { placeOf } from "../threads/bodies.ts";
import type { Threads } from "../threads/threads.ts";
import { bodyInFile } from "./bodyInFile.ts";
import { bytesOf, type Method, parsed, type Route } from "./route.ts";

/** Greatest body of a request unless a route sets its own [byte]. */
const BODY_LIMIT = 1_000_000;

/** A body must say that it is JSON, in UTF-8 and as it is. */
const checkType: RequestHandler = (request, _response, next) => {
  const type = request.get("content-type") ?? "none";
  const charset = /;\s*charset="?([^";\s]+)/i.exec(type)?.[1] ?? "utf-8";
  // A request with nothing in it is the schema's to refuse: it says what is missing.
  const isEmpty = request.get("content-length") === "0";
  if (!isEmpty && (request.is("json") === false || charset.toLowerCase() !== "utf-8")) {
    const message = `The body's content type is ${type}; allowed: application/json, in UTF-8.`;
    throw new Refusal(415, "unsupported-media-type", message);
  }
  refuseCompressed(request);
  next();
};

/** What pairs and revokes devices isn't a device's to ask. */
const refuseDevices: RequestHandler = (request, _response, next) => {
  if (isOverNetwork(request)) {
    const message = "Only the machine that Gripcurve runs on may ask this. Open it there as 127.0.0.1.";
    throw new Refusal(403, "this-machine-only", message);
  }
  next();
};

/** Keeps a body's bytes, up to the route's limit. */
const inMemory = (limit: number): RequestHandler => express.raw({ type: () => true, limit, inflate: false });

/** A small body that unpacks to a huge one would get past every limit. */
function refuseCompressed(request: Request): void {
  const coding = request.get("content-encoding") ?? "identity";
  if (coding.toLowerCase() === "identity") return;
  const message = `The body is compressed (${coding}); allowed: a body as it is, without Content-Encoding.`;
  throw new Refusal(415, "unsupported-encoding", message, [], { "Accept-Encoding": "identity" });
}

function refuseMethod(allowed: readonly Method[]): RequestHandler {
  const names = allowed.map((method) => method.toUpperCase());
  const allow = [...names, ...(names.includes("GET") ? ["HEAD"] : []), "OPTIONS"].join(", ");
  return (request, response) => {
    if (request.method === "OPTIONS") {
      response.status(204).set("Allow", allow).end();
      return;
    }
    const message = `${request.method} is not possible here; allowed: ${allow}.`;
    throw new Refusal(405, "method-not-allowed", message, [], { Allow: allow });
  };
}

/** A body beyond this takes long to read and check [byte]. */
const LARGE_BODY = 16_000;

/** Puts what a body holds in its place. */
function checkBody(schema: z.ZodType, threads: Threads): RequestHandler {
  const place = placeOf(schema);
  return async (request, _response, next) => {
    const bytes = bytesOf(request);
    const isLarge = place >= 0 && bytes.length > LARGE_BODY;
    request.body = isLarge
      ? await threads.run("check", { schema: place, bytes })
      : parsed(schema, readJson(bytes));
    next();
  };
}

function bodySteps(route: Route, threads: Threads): RequestHandler[] {
  const { body, takesBytes = false, takesFile = false, bodyLimit = BODY_LIMIT } = route;
  if (!body) return [];
  if (takesFile) return [checkType, bodyInFile(bodyLimit)];
  return [checkType, inMemory(bodyLimit), ...(takesBytes ? [] : [checkBody(body, threads)])];
}

const stepsOf = (route: Route, threads: Threads): RequestHandler[] => [
  ...(route.thisMachineOnly ? [refuseDevices] : []),
  ...bodySteps(route, threads),
  route.serve,
];

/** Serves routes, and refuses every other method on their paths. */
export function served(routes: readonly Route[], threads: Threads): Router {
  const router = Router();
  for (const route of routes) router[route.method](route.path, ...stepsOf(route, threads));
  for (const path of new Set(routes.map((each) => each.path))) {
    router.all(path, refuseMethod(routes.filter((each) => each.path === path).map(({ method }) => method)));
  }
  return router;
}

/** The first part of a path, which is a word in every route; letters count alike as in the rest of it. */
const firstPart = (path: string): string => path.split("/", 2)[1]?.toLowerCase() ?? "";

/** @returns a router that serves the routes and refuses every other method on their paths, and every other path */
export function mount(routes: readonly Route[], threads: Threads): Router {
  const router = Router();
  // One look instead of a comparison with every route there is.
  const parts = [...new Set(routes.map(({ path }) => firstPart(path)))];
  const routesOf = (part: string) => routes.filter(({ path }) => firstPart(path) === part);
  const routers = new Map(parts.map((part) => [part, served(routesOf(part), threads)]));
  router.use((request, response, next) => {
    const own = routers.get(firstPart(request.path));
    if (own) own(request, response, next);
    else next();
  });
  router.use((request) => {
    throw new Refusal(404, "not-found", `There is nothing at ${request.originalUrl.split("?")[0]}.`);
  });
  return router;
}
