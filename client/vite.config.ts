import { createHash } from "node:crypto";
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { defineConfig, type Plugin } from "vite";
import { chunkOf, listAhead, sharedAhead } from "./chunks.ts";
import { SHELLS, type Shell } from "./offline/shell.ts";

const DEFAULT_PORT = 4310;
const server = `http://127.0.0.1:${process.env.PORT ?? DEFAULT_PORT}`;

/** At the top, so that every page is in its scope, and under one name in every build. */
const SERVICE_WORKER = "service-worker.js";

/** @returns what a built client's pages are made of, under a name that any change of theirs changes */
function shellOf(folder: string): Shell {
  const files = readdirSync(join(folder, "assets"))
    .sort()
    .map((file) => `/assets/${file}`);
  const page = readFileSync(join(folder, "index.html"));
  const build = createHash("sha256").update(page).update(files.join()).digest("hex");
  return { name: SHELLS + build.slice(0, 16), files };
}

/** Writes the list of the build's files into the service worker, once they are all there. */
const listShell = (): Plugin => ({
  name: "list-shell",
  writeBundle({ dir = "" }) {
    const file = join(dir, SERVICE_WORKER);
    const shell = JSON.stringify(shellOf(dir));
    writeFileSync(
      file,
      readFileSync(file, "utf8").replaceAll("__SHELL__", () => shell),
    );
  },
});

const inputs = {
  index: "index.html",
  // The page that pairs a device stands by itself: a stranger is shown nothing else.
  pair: "pair.html",
  serviceWorker: "offline/serviceWorker.ts",
};

/** Builds the client beside the server's bundle; in development it asks a running server for the data. */
export default defineConfig({
  root: import.meta.dirname,
  plugins: [sharedAhead(), listAhead(), listShell()],
  build: {
    outDir: "../.build/client",
    emptyOutDir: true,
    target: "es2022",
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    rolldownOptions: {
      input: Object.fromEntries(
        Object.entries(inputs).map(([name, file]) => [name, join(import.meta.dirname, file)]),
      ),
      output: {
        entryFileNames: ({ name }) => (name === "serviceWorker" ? SERVICE_WORKER : "assets/[name]-[hash].js"),
        codeSplitting: {
          groups: [{ name: chunkOf(import.meta.dirname) }],
          includeDependenciesRecursively: false,
        },
      },
    },
  },
  // One thread program for every task; its chunks are named so that they can be told from the page's own.
  worker: {
    format: "es",
    rolldownOptions: { output: { chunkFileNames: "assets/worker-[name]-[hash].js" } },
  },
  server: { proxy: { "/api": server, "/docs": server } },
});
