import { describe, expect, it } from "vitest";
import { chunkOf } from "#client/chunks.ts";

const ROOT = "/client";

/** Which module imports which as it starts; what is imported later is no part of it. */
const IMPORTS: Readonly<Record<string, readonly string[]>> = {
  "/client/main.tsx": ["/client/state/book.ts", "/client/ui/theme.ts", "/client/offline/shell.ts"],
  "/client/pair/main.tsx": ["/client/ui/theme.ts"],
  "/client/offline/serviceWorker.ts": ["/client/offline/shell.ts"],
  "/client/views/match/MatchView.tsx": ["/client/views/match/Hints.tsx", "/client/charts/plot.ts"],
  "/client/views/match/Hints.tsx": ["/client/state/book.ts"],
  "/client/charts/plot.ts": ["/client/charts/axis.ts", "/client/ui/theme.ts"],
  // round in a circle, as modules may
  "/client/charts/axis.ts": ["/client/charts/plot.ts"],
};

const graph = (imports: typeof IMPORTS) => ({
  getModuleInfo: (id: string) => ({ importedIds: imports[id] ?? [] }),
});

describe("files of script", () => {
  it.each([
    ["what every page starts with", "/client/state/book.ts", "start"],
    ["what the first view shares", "/client/charts/axis.ts", "views"],
    ["the first view's own", "/client/views/match/Hints.tsx", null],
    ["what a stranger's page for pairing loads as well", "/client/ui/theme.ts", null],
    ["what the service worker loads as well", "/client/offline/shell.ts", null],
    ["another view's own", "/client/views/size/SizeView.tsx", null],
  ])("of %s: as it should be", (_, id, file) => {
    expect(chunkOf(ROOT)(id, graph(IMPORTS))).toBe(file);
  });

  it("where every page would start with schemas: refused", () => {
    const zod = "/repo/node_modules/zod/index.js";
    const heavy = { ...IMPORTS, "/client/state/book.ts": [zod] };
    expect(() => chunkOf(ROOT)(zod, graph(heavy))).toThrow(zod);
    expect(chunkOf(ROOT)(zod, graph(IMPORTS))).toBeNull();
  });

  it("where a page was moved: refused, not left out unseen", () => {
    const moved = { getModuleInfo: () => null };
    expect(() => chunkOf(ROOT)("/client/state/book.ts", moved)).toThrow("/client/pair/main.tsx");
  });
});
