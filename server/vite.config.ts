import { defineConfig } from "vite";

const root = new URL("..", import.meta.url).pathname;

/** mathjs and what it stands on. */
const MATHJS = [
  "mathjs",
  "complex.js",
  "decimal.js",
  "fraction.js",
  "tiny-emitter",
  "typed-function",
  /^@babel\/runtime/,
];

/**
 * The server, and its worker beside it, as files that run on Node. Packages stay where npm put them, but for mathjs:
 * of its hundreds of files the units alone are needed, and reading them all would be most of the server's start.
 */
export default defineConfig({
  root,
  publicDir: false,
  ssr: { noExternal: MATHJS },
  build: {
    ssr: true,
    outDir: ".build/server",
    emptyOutDir: true,
    target: "node20",
    sourcemap: true,
    rollupOptions: {
      input: { main: "server/main.ts", choose: "server/workers/choose.ts" },
      output: { entryFileNames: "[name].js", chunkFileNames: "[name]-[hash].js" },
    },
  },
});
