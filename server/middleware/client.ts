import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import express, { type RequestHandler, type Response, Router } from "express";
import { SCREENS } from "../../shared/model/screens.ts";
import { Refusal } from "../refusal.ts";
import { PAIRING_PAGE } from "./pairedOnly.ts";

/** The one that an address without a path shows. */
const FIRST_SCREEN = "match";
const NOT_BUILT =
  "The screens are not built yet: run npm run build, then start again. The API is at /api/v1.";

/** Vite puts a hash of the content into every name under /assets, so that a name never means other content. */
const HASHED = { immutable: true, maxAge: "1y", index: false } as const;

/** Serves the built client; an address that is no file is one of its screens, or none. */
export function serveClient(folder: string): Router {
  const router = Router();
  router.use("/assets", express.static(join(folder, "assets"), HASHED), refuseMissing);
  router.use(express.static(folder, { index: false, maxAge: 0 }));
  router.get(PAIRING_PAGE, (_request, response) => sendPage(response, join(folder, "pair.html")));
  router.use(answerView(folder));
  return router;
}

type Ahead = Readonly<Partial<Record<string, readonly string[]>>>;

/** @returns the Link header (RFC 8288) that has a screen's scripts fetched while the page's start is; null where the build wrote no list. Read anew each time, as the page is: each names the scripts of its own build. */
function linkOf(folder: string, screen: string): string | null {
  const file = join(folder, "ahead.json");
  const ahead: Ahead = existsSync(file) ? JSON.parse(readFileSync(file, "utf8")) : {};
  const files = ahead[screen || FIRST_SCREEN] ?? [];
  return files.length > 0 ? files.map((name) => `</${name}>; rel="modulepreload"`).join(", ") : null;
}

/** A page is asked for anew each time: it names the scripts of its own build. */
function sendPage(response: Response, page: string): void {
  response.set("Cache-Control", "no-cache");
  if (existsSync(page)) response.sendFile(page, { dotfiles: "allow", cacheControl: false });
  else response.status(404).type("text/plain").send(NOT_BUILT);
}

/** A script that an older page asks for must not be answered with the page. */
const refuseMissing: RequestHandler = (request) => {
  throw new Refusal(404, "not-found", `There is nothing at ${request.originalUrl.split("?")[0]}.`);
};

const isScreen = ([, first]: readonly string[]): boolean =>
  first === "" || SCREENS.some((screen) => screen === first);

/** An address of a file, such as /favicon.ico: whoever asks for it has no use for a page. */
const isFile = (parts: readonly string[]): boolean => /\.\w+$/.test(parts[parts.length - 1]);

/** An address that no screen has gets the app too, which says so, but as the 404 that it is. */
function answerView(folder: string): RequestHandler {
  const page = join(folder, "index.html");
  return (request, response, next) => {
    if (request.method !== "GET" && request.method !== "HEAD") {
      throw new Refusal(405, "method-not-allowed", `${request.method} is not possible here.`, [], {
        Allow: "GET, HEAD",
      });
    }
    const parts = request.path.split("/");
    if (!isScreen(parts) && isFile(parts)) {
      refuseMissing(request, response, next);
      return;
    }
    const link = linkOf(folder, parts[1]);
    if (link) response.set("Link", link);
    sendPage(response.status(isScreen(parts) ? 200 : 404), page);
  };
}
