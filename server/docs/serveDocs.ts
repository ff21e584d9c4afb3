import { type RequestHandler, Router } from "express";
import { Refusal } from "../refusal.ts";
import { docPaths, docStyle, docText, drawingAt, pictureAt } from "./files.ts";
import { contents, docPage } from "./page.ts";
import { rendered } from "./render.ts";

/** What a browser may keep, but asks after each time. */
const CACHE = "no-cache";

const onlyRead: RequestHandler = (request, _response, next) => {
  if (request.method !== "GET" && request.method !== "HEAD")
    throw new Refusal(405, "method-not-allowed", `${request.method} is not possible here.`, [], {
      Allow: "GET, HEAD",
    });
  next();
};

/** The docs under a folder, all of them under "", as a page; null where there are none. */
async function listOf(folder: string): Promise<string | null> {
  const paths = docPaths().filter((path) => path.startsWith(folder));
  if (paths.length === 0) return null;
  const docs = paths.map(async (path) => {
    const { title } = rendered((await docText(path)) ?? "", path);
    return { path, title };
  });
  return docPage(contents(await Promise.all(docs)));
}

async function pageAt(path: string): Promise<string | null> {
  if (path === "" || path.endsWith("/")) return listOf(path);
  const text = await docText(path);
  return text === null ? null : docPage(rendered(text, path));
}

/** Serves the docs as pages, made of the same Markdown at the same paths, so that their links to one another hold. */
export function serveDocs(): Router {
  const router = Router();
  router.use(onlyRead);
  router.get("/docs.css", async (_request, response) => {
    response
      .set("Cache-Control", CACHE)
      .type("css")
      .send(await docStyle());
  });
  router.use(async (request, response) => {
    const path = request.path.slice(1);
    if (docPaths().includes(`${path}.md`)) return response.redirect(`/docs/${path}.md`);
    const drawing = await drawingAt(path);
    if (drawing !== null) return response.set("Cache-Control", CACHE).type("svg").send(drawing);
    const picture = await pictureAt(path);
    if (picture !== null) return response.set("Cache-Control", CACHE).type("webp").send(picture);
    const page = await pageAt(path);
    if (page === null)
      throw new Refusal(404, "not-found", `There is nothing at ${request.originalUrl.split("?")[0]}.`);
    response.set("Cache-Control", CACHE).type("html").send(page);
  });
  return router;
}
