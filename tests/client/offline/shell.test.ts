import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { answerTo, forgetOldShells, keepShell } from "#client/offline/shell.ts";

const ORIGIN = "https://bench.local";
const SHELL = { name: "gripcurve shell b", files: ["/assets/index-b.js"] };

/** The browser's caches, as far as the shell uses them: addresses and what is kept under each. */
let kept: Map<string, Map<string, Response>>;
const pathOf = (request: Request | string): string =>
  typeof request === "string" ? request : new URL(request.url).pathname;

function cacheOf(name: string) {
  const entries = kept.get(name) ?? new Map<string, Response>();
  kept.set(name, entries);
  return {
    match: async (request: Request | string) => entries.get(pathOf(request))?.clone(),
    put: async (request: string, response: Response) => void entries.set(request, response),
    addAll: async (paths: readonly string[]) => {
      for (const path of paths) entries.set(path, await fetch(path));
    },
  };
}

const caches = {
  open: async (name: string) => cacheOf(name),
  keys: async () => [...kept.keys()],
  delete: async (name: string) => kept.delete(name),
  match: async (request: Request) =>
    [...kept.values()].map((entries) => entries.get(pathOf(request))).find(Boolean),
};

const page = (path: string) => {
  const request = new Request(ORIGIN + path);
  // Only a browser makes requests of this mode.
  Object.defineProperty(request, "mode", { value: "navigate" });
  return request;
};
const said = async (answer: Promise<Response> | null) => (await answer)?.text();
const asked = (request: Request) => answerTo(request, SHELL, ORIGIN);
const served = (answer: (path: string) => Response | Promise<Response>) =>
  vi.stubGlobal(
    "fetch",
    vi.fn(async (request: Request | string) => answer(pathOf(request))),
  );
const gone = () => Promise.reject(new TypeError("Failed to fetch"));

beforeEach(async () => {
  kept = new Map();
  vi.stubGlobal("caches", caches);
  served((path) => new Response(`kept ${path}`));
  await keepShell(SHELL);
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

describe("a screen's page", () => {
  it("with a server that answers, is the server's: another build is shown at once", async () => {
    served(() => new Response("the page of the next build"));
    expect(await said(asked(page("/bench/new/pull")))).toBe("the page of the next build");
  });

  it("without a server, is the kept one, whichever screen is asked for", async () => {
    served(gone);
    for (const path of ["/", "/bench/new/pull", "/match/pane-crawler", "/nonsense"])
      expect(await said(asked(page(path)))).toBe("kept /");
  });

  it("with a server that takes too long, is the kept one", async () => {
    vi.useFakeTimers();
    served(() => new Promise(() => {}));
    const answer = said(asked(page("/bench")));
    await vi.advanceTimersByTimeAsync(4_000);
    expect(await answer).toBe("kept /");
  });

  it("that the server refuses, is that refusal", async () => {
    served(() => new Response("failed", { status: 500 }));
    expect((await asked(page("/bench")))?.status).toBe(500);
  });

  it.each(["/docs/", "/docs/phone.md", "/pair", "/api/v1/openapi.json", "/manifest.webmanifest", "/docs"])(
    "is not what %s leads to: the server alone answers",
    (path) => expect(asked(page(path))).toBeNull(),
  );
});

describe("a file of the build", () => {
  it("that is kept, is not asked for again", async () => {
    expect(await said(asked(new Request(`${ORIGIN}/assets/index-b.js`)))).toBe("kept /assets/index-b.js");
    expect(fetch).not.toHaveBeenCalledWith(
      expect.objectContaining({ url: expect.stringContaining("index-b") }),
    );
  });

  it("of the build before is there as long as a page of it may be open, and no longer", async () => {
    const before = cacheOf("gripcurve shell a");
    await before.put("/assets/index-a.js", new Response("the build before"));
    await forgetOldShells(SHELL);
    served(gone);
    expect(await said(asked(new Request(`${ORIGIN}/assets/index-a.js`)))).toBe("the build before");
    kept.delete(SHELL.name);
    cacheOf("gripcurve shell c");
    cacheOf("another program's");
    await forgetOldShells({ ...SHELL, name: "gripcurve shell d" });
    expect([...kept.keys()]).toEqual(["gripcurve shell c", "another program's"]);
  });
});

describe("everything else", () => {
  it.each([
    ["the API's answers", new Request(`${ORIGIN}/api/v1/tests`)],
    ["what is written", new Request(`${ORIGIN}/assets/index-b.js`, { method: "POST" })],
    ["another origin", new Request("https://elsewhere.example/assets/index-b.js")],
  ])("is left to the server: %s", (_what, request) => expect(asked(request)).toBeNull());
});

describe("a shell that can't be kept whole", () => {
  it.each([
    ["a file is missing", (path: string) => (path === "/" ? new Response("page") : gone())],
    ["the page is refused", () => new Response("", { status: 401 })],
    [
      "the page is another one",
      () => Object.defineProperty(new Response("pair"), "redirected", { value: true }),
    ],
  ])("is not used, where %s", async (_why, answer) => {
    served(answer);
    await expect(keepShell({ name: "gripcurve shell new", files: ["/assets/new.js"] })).rejects.toThrow();
    served(gone);
    await expect(answerTo(page("/"), { ...SHELL, name: "gripcurve shell new" }, ORIGIN)).rejects.toThrow();
  });
});
