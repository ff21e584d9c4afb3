import { existsSync } from "node:fs";
import { join } from "node:path";
import express, { type RequestHandler, Router } from "express";
import { Refusal } from "../refusal.ts";

const NOT_BUILT =
  "The screens are not built yet: run npm run build, then start again. The API is at /api/v1.";

/** Vite puts a hash of the content into every name under /assets, so that a name never means other content. */
const HASHED = { immutable: true, maxAge: "1y", index: false } as const;

/** Serves the built client; any address that is no file is one of its views. */
export function serveClient(folder: string): Router {
  const router = Router();
  router.use("/assets", express.static(join(folder, "assets"), HASHED), refuseMissingAsset);
  router.use(express.static(folder, { index: false, maxAge: 0 }));
  router.use(answerView(folder));
  return router;
}

/** A script that an older page asks for must not be answered with the page. */
const refuseMissingAsset: RequestHandler = (request) => {
  throw new Refusal(404, "not-found", `There is nothing at ${request.originalUrl.split("?")[0]}.`);
};

function answerView(folder: string): RequestHandler {
  const page = join(folder, "index.html");
  return (request, response) => {
    if (request.method !== "GET" && request.method !== "HEAD") {
      throw new Refusal(405, "method-not-allowed", `${request.method} is not possible here.`, [], {
        Allow: "GET, HEAD",
      });
    }
    response.set("Cache-Control", "no-cache");
    if (existsSync(page)) response.sendFile(page, { dotfiles: "allow", cacheControl: false });
    else response.status(404).type("text/plain").send(NOT_BUILT);
  };
}
