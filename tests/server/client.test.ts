import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import supertest from "supertest";
import { describe, expect, it } from "vitest";
import { createApp } from "#server/app.ts";
import { freshFolder, freshStore, steppingClock } from "./support/book.ts";

function served(build: (folder: string) => void) {
  const client = freshFolder();
  build(client);
  return supertest(createApp({ store: freshStore(), clock: steppingClock(), client }));
}

const built = () =>
  served((folder) => {
    mkdirSync(join(folder, "assets"));
    writeFileSync(join(folder, "index.html"), "<!doctype html><title>Gripcurve</title>");
    writeFileSync(join(folder, "pair.html"), "<!doctype html><title>Pair</title>");
    writeFileSync(join(folder, "assets", "index-a1b2.js"), "export {};");
    const ahead = { match: ["assets/match-a1.js", "assets/plot-b2.js"], bench: ["assets/bench-c3.js"] };
    writeFileSync(join(folder, "ahead.json"), JSON.stringify(ahead));
  });

describe("the built client", () => {
  it.each(["/", "/match/some-build", "/bench"])(
    "at %s: is the page, to be asked for anew each time",
    async (path) => {
      const { text, headers } = await built().get(path).expect(200);
      expect(text).toContain("<title>Gripcurve</title>");
      expect(headers["content-type"]).toMatch(/^text\/html/);
      expect(headers["cache-control"]).toBe("no-cache");
    },
  );

  it.each([
    ["/match/some-build", ["match-a1", "plot-b2"]],
    ["/", ["match-a1", "plot-b2"]],
    ["/bench", ["bench-c3"]],
  ])("at %s: names the scripts that this screen starts with", async (path, names) => {
    const { headers } = await built().get(path).expect(200);
    const links = names.map((name) => `</assets/${name}.js>; rel="modulepreload"`);
    expect(headers.link).toBe(links.join(", "));
  });

  it.each(["/mass", "/nonsense"])("at %s, which the list doesn't have: names none", async (path) => {
    expect((await built().get(path)).headers.link).toBeUndefined();
  });

  it("at /pair: is the page that pairs a device, and no screen of the app", async () => {
    const { text, headers } = await built().get("/pair").expect(200);
    expect(text).toContain("<title>Pair</title>");
    expect(headers["cache-control"]).toBe("no-cache");
  });

  it("its hashed files: may be kept for good; one that is missing is a 404 and not the page", async () => {
    const api = built();
    const { headers } = await api.get("/assets/index-a1b2.js").expect(200);
    expect(headers["cache-control"]).toBe("public, max-age=31536000, immutable");
    const { body } = await api.get("/assets/index-old.js").expect(404);
    expect(body.error.code).toBe("not-found");
  });

  it.each(["/favicon.ico", "/manifest.webmanifest", "/robots.txt", "/match.php"])(
    "at %s, a file that there isn't: 404 in the one shape of refusals",
    async (path) => {
      const { body } = await built().get(path).expect(404);
      expect(body.error.code).toBe("not-found");
    },
  );

  it.each(["/nonsense", "/nonsense/deeper", "/matching", "/Match"])(
    "at %s, which no screen has: 404, with the app that says so",
    async (path) => {
      const { text, headers } = await built().get(path).expect(404);
      expect(text).toContain("<title>Gripcurve</title>");
      expect(headers["cache-control"]).toBe("no-cache");
    },
  );

  it("never stands in for an address of the API, nor answers another method", async () => {
    const api = built();
    await api.get("/api/v1/nothing").expect(404).expect("content-type", /json/);
    await api.post("/match").expect(405);
  });

  it("not built yet: says in plain text how to build it", async () => {
    const { text } = await served(() => {})
      .get("/match")
      .expect(404);
    expect(text).toMatch(/npm run build/);
  });
});
