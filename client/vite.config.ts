import { defineConfig } from "vite";

const DEFAULT_PORT = 4310;
const server = `http://127.0.0.1:${process.env.PORT ?? DEFAULT_PORT}`;

/** Builds the client beside the server's bundle; in development it asks a running server for the data. */
export default defineConfig({
  root: import.meta.dirname,
  build: {
    outDir: "../.build/client",
    emptyOutDir: true,
    target: "es2022",
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    // The page that pairs a device stands by itself: a stranger is shown nothing else.
    rolldownOptions: { input: ["index.html", "pair.html"].map((page) => `${import.meta.dirname}/${page}`) },
  },
  // One thread program for every task; its chunks are named so that they can be told from the page's own.
  worker: {
    format: "es",
    rolldownOptions: { output: { chunkFileNames: "assets/worker-[name]-[hash].js" } },
  },
  server: { proxy: { "/api": server, "/docs": server } },
});
