import express, { type RequestHandler, Router } from "express";
import { Refusal } from "../refusal.ts";
import type { Method, Route } from "./route.ts";

/** Greatest body of a request unless a route sets its own [byte]. */
const BODY_LIMIT = 1_000_000;

/** A body must say that it is JSON; then it is read, up to the route's limit. */
function readJson(limit: number): RequestHandler[] {
  const checkType: RequestHandler = (request, _response, next) => {
    // A request with nothing in it is the schema's to refuse: it says what is missing.
    if (request.get("content-length") !== "0" && request.is("json") === false) {
      const said = request.get("content-type") ?? "none";
      const message = `The body's content type is ${said}; allowed: application/json.`;
      throw new Refusal(415, "unsupported-media-type", message);
    }
    next();
  };
  return [checkType, express.json({ limit })];
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

/** @returns a router that serves the routes and refuses every other method on their paths, and every other path */
export function mount(routes: readonly Route[]): Router {
  const router = Router();
  for (const { method, path, body, bodyLimit = BODY_LIMIT, serve } of routes) {
    router[method](path, ...(body ? readJson(bodyLimit) : []), serve);
  }
  for (const path of new Set(routes.map((each) => each.path))) {
    router.all(path, refuseMethod(routes.filter((each) => each.path === path).map(({ method }) => method)));
  }
  router.use((request) => {
    throw new Refusal(404, "not-found", `There is nothing at ${request.originalUrl.split("?")[0]}.`);
  });
  return router;
}
